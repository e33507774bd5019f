export { cableForWay, ledWay, straightLine } from "./way.js";
