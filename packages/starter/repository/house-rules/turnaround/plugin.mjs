import { plugin } from "plumbmark/kit";
import turnaround from "./rule.mjs";

export default plugin({ kit: 1, rules: [turnaround] });
