// The schema library compiles its checks where it may. The policy of this page forbids that, and browsers report the attempt, so it
// is told before the library loads.
import { config } from "zod";

config({ jitless: true });
void import("./page.js");
