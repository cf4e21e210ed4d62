/** The thread that reckons, and does nothing else: takes a question, gives the answer, in order. Started by in-worker.ts. */
import os from "node:os";
import { parentPort } from "node:worker_threads";
import { checkObject } from "../said/check-object.js";
import { answerer, type Question } from "./question.js";

const answer = answerer(checkObject);
parentPort?.on("message", (question: Question) => parentPort?.postMessage(answer(question)));

// Where the cores are few, those who enter and read go first (on Linux 0 is this thread; elsewhere it may be the process).
if (process.platform === "linux") os.setPriority(0, os.constants.priority.PRIORITY_BELOW_NORMAL);
