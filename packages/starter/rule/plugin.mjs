import { plugin } from "plumbmark/kit";
import rule from "./rule.mjs";

export default plugin({ kit: 1, rules: [rule] });
