/** Which joints of head, cockpit and wheels are judged? J1 to J10 and J12 to J16. */
import type { JointDefinition } from "../joint-definition.js";
import { j1CupInHeadTube } from "./j1-cup-in-head-tube.js";
import { j2RaceOnFork } from "./j2-race-on-fork.js";
import { j3SteererInHeadset } from "./j3-steerer-in-headset.js";
import { j4ForkInFrame } from "./j4-fork-in-frame.js";
import { j5StemOnSteerer } from "./j5-stem-on-steerer.js";
import { j6BarInStem } from "./j6-bar-in-stem.js";
import { j7LeverOnBar } from "./j7-lever-on-bar.js";
import { j8SpacersOnSteerer } from "./j8-spacers-on-steerer.js";
import { j9HubInFrame } from "./j9-hub-in-frame.js";
import { j10AxleInSlot } from "./j10-axle-in-slot.js";
import { j12FrontRetention } from "./j12-front-retention.js";
import { j13HubInFork } from "./j13-hub-in-fork.js";
import { j14AxleInForkEnd } from "./j14-axle-in-fork-end.js";
import { j15WheelInSpace } from "./j15-wheel-in-space.js";
import { j16TyreOnRim } from "./j16-tyre-on-rim.js";

export const frontAndWheelsJoints: readonly JointDefinition[] = [
  j1CupInHeadTube,
  j2RaceOnFork,
  j3SteererInHeadset,
  j4ForkInFrame,
  j5StemOnSteerer,
  j6BarInStem,
  j7LeverOnBar,
  j8SpacersOnSteerer,
  j9HubInFrame,
  j10AxleInSlot,
  j12FrontRetention,
  j13HubInFork,
  j14AxleInForkEnd,
  j15WheelInSpace,
  j16TyreOnRim,
];
