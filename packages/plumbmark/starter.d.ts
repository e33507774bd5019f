export * from "@plumbmark/starter/cases";
