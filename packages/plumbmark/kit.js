export * from "@plumbmark/kit";
