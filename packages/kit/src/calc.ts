/** Every formula, table and unit of the engineering behind the model. */
export * from "@plumbmark/calc";
