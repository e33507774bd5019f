export * from "@plumbmark/kit/tryout";
