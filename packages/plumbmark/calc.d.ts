export * from "@plumbmark/kit/calc";
