import { GRAVITY, type Known, times, type Value } from "@plumbmark/calc";

/** A rating or load written as a mass or a force → kilograms. */
export const asMass = (value: Value): Value<"mass"> =>
  value.known && value.kind === "force"
    ? { ...(times(value, 1 / GRAVITY, "1 ÷ 9.80665 m/s²") as Known), kind: "mass" }
    : { ...value, kind: "mass" };
