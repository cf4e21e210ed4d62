/**
 * How much may a request ask, how long may it take, and how many may come at once? Far above what the page needs, far
 * below what could keep the workshop from its owner. The limits of a body stand in json-body.ts.
 */
export interface Limits {
  /** Letters of path and query together. */
  readonly urlLetters: number;
  /** Steps between the slashes of a path. */
  readonly pathSteps: number;
  /** Bytes of the first line and all headers together. */
  readonly headerBytes: number;
  readonly headerCount: number;
  /** All headers must have come in by then. */
  readonly headersMs: number;
  /** The whole request must have come in by then, however it dribbles. */
  readonly requestMs: number;
  /** An open connection without a request is closed after this. */
  readonly keepAliveMs: number;
  /** A connection on which nothing moves is closed after this; longer than an answer may take. */
  readonly idleMs: number;
  /** An answer that is not there by then is given up. */
  readonly answerMs: number;
  /** Requests that are being answered at the same moment; their bodies are in memory. */
  readonly atOnce: number;
  /** Requests that wait for their turn, nothing of their bodies read yet, and for how long at most. */
  readonly waiting: number;
  readonly waitingMs: number;
  /** Streams of events that stay open, of which each is also a connection. */
  readonly streams: number;
  /** Open connections; one more is told so, twice as many are not even greeted. */
  readonly connections: number;
}

export const LIMITS: Limits = {
  urlLetters: 2_000,
  pathSteps: 16,
  headerBytes: 16_384,
  headerCount: 100,
  headersMs: 10_000,
  requestMs: 30_000,
  keepAliveMs: 5_000,
  idleMs: 120_000,
  answerMs: 60_000,
  atOnce: 32,
  // A workshop of 200 people has each of them asking once at the same moment, now and then (bench/load.mjs).
  waiting: 512,
  waitingMs: 5_000,
  // Each of them listens, and a browser keeps up to 6 connections to one server: one that listens, one or two that ask.
  streams: 256,
  connections: 1_024,
};
