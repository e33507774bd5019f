#!/usr/bin/env node
// The command as it is built; its package comes with this one.
import "./node_modules/@plumbmark/cli/dist/plumbmark.js";
