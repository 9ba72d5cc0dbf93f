import { writeFileSync } from "node:fs";
import { decisionTable } from "./decision-table.js";

writeFileSync("docs/rules.md", decisionTable());
