import type { CheckEntry, RepositoryFiles, StatedRule } from "@plumbmark/core";

/** One rule of the plugin on one document. */
export interface Job {
  readonly rule: string;
  readonly file: string;
}

/** What the plugin's process is asked to do. */
export type PluginRequest =
  | {
      readonly ask: "load";
      /** As the house standard names it. */
      readonly plugin: string;
      /** Address of a file, or name of a package. */
      readonly target: string;
      /** Memory it may take besides what it starts with, in bytes. */
      readonly memory: number;
      /** The process that inspects: the plugin's must not outlive it. */
      readonly parent: number;
      /** Stands before what the guard says, so that the plugin cannot say it by chance. */
      readonly token: string;
    }
  | {
      readonly ask: "work";
      /** Documents no job is on may be among the others, of which it gets the outlines alone. */
      readonly files: RepositoryFiles;
      readonly today: string;
      readonly jobs: readonly Job[];
    };

/** What it answers. Anything may come from the process of a plugin: it is looked at before it is believed. */
export type PluginAnswer =
  | { readonly answer: "ready" }
  | { readonly answer: "loaded"; readonly rules: readonly StatedRule[] }
  | { readonly answer: "begun" }
  | {
      readonly answer: "done";
      readonly job: number;
      readonly checks: readonly CheckEntry[];
      /** Whether this rule, or one before it, has looked at the builds of other documents. */
      readonly around: boolean;
      /** Paths of the documents whose content the checks rest on. */
      readonly dependencies: readonly string[];
    }
  | {
      readonly answer: "broke";
      readonly reason: string;
      /** A package that is not installed. */
      readonly absent?: string;
    };
