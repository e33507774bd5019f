// Loaded before the command: its threads come to grief in the way THREADS names. Four processors, so that there are any.
import { syncBuiltinESMExports } from "node:module";
import os from "node:os";
import threads from "node:worker_threads";

const way = process.env.THREADS;
os.availableParallelism = () => 4;

const { Worker } = threads;
const refused = Object.assign(new Error("Worker initialization failure: EAGAIN"), { code: "ERR_WORKER_INIT_FAILED" });

const ways = {
  fine: Worker,
  refused: class {
    constructor() {
      throw refused;
    }
  },
  memory: class extends Worker {
    constructor(file) {
      super(file, { execArgv: [], resourceLimits: { maxOldGenerationSizeMb: 8, maxYoungGenerationSizeMb: 1 } });
    }
  },
  ended: class extends Worker {
    constructor(...words) {
      super(...words);
      void this.terminate();
    }
  },
  exits: class extends Worker {
    constructor() {
      super("require('node:worker_threads').parentPort.once('message', () => process.exit(3))", { eval: true });
    }
  },
  throws: class extends Worker {
    constructor() {
      super("throw new Error('no')", { eval: true });
    }
  },
  missing: class extends Worker {
    constructor() {
      super(new URL("file:///nowhere/thread.js"));
    }
  },
  uncopied: class extends Worker {
    postMessage() {
      super.postMessage(() => undefined);
    }
  },
};
threads.Worker = ways[way];
syncBuiltinESMExports();
