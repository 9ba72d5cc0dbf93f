import { mkdirSync, writeFileSync } from "node:fs";
import { schemaPath, schemas, schemaText } from "./schemas.js";

mkdirSync("docs/schemas", { recursive: true });
for (const [name, schema] of Object.entries(schemas())) writeFileSync(schemaPath(name), schemaText(schema));
