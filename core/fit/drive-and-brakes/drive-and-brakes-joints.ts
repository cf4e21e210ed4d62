/** Which joints of brakes, drive and post are judged? J19 to J24, J28, J29, J31 to J37, J42 and J43. */
import type { JointDefinition } from "../joint-definition.js";
import { j19RotorOnHub } from "./j19-rotor-on-hub.js";
import { j20RotorPlane } from "./j20-rotor-plane.js";
import { j21HubGearAxle } from "./j21-hub-gear-axle.js";
import { j22CaliperOnMount } from "./j22-caliper-on-mount.js";
import { j23TabOnFrame } from "./j23-tab-on-frame.js";
import { j24TabOnFork } from "./j24-tab-on-fork.js";
import { j28LeverAndCableCaliper } from "./j28-lever-and-cable-caliper.js";
import { j29LeverAndHydraulicCaliper } from "./j29-lever-and-hydraulic-caliper.js";
import { j31BbInShell } from "./j31-bb-in-shell.js";
import { j32CrankOnSpindle } from "./j32-crank-on-spindle.js";
import { j33ArmAtChainstay } from "./j33-arm-at-chainstay.js";
import { j34RingAtChainstay } from "./j34-ring-at-chainstay.js";
import { j35RingOnSpider } from "./j35-ring-on-spider.js";
import { j36Chainline } from "./j36-chainline.js";
import { j37ChainOnTeeth } from "./j37-chain-on-teeth.js";
import { j42ChainOnFixedCentres } from "./j42-chain-on-fixed-centres.js";
import { j43PostInSeatTube } from "./j43-post-in-seat-tube.js";

export const driveAndBrakesJoints: readonly JointDefinition[] = [
  j19RotorOnHub,
  j20RotorPlane,
  j21HubGearAxle,
  j22CaliperOnMount,
  j23TabOnFrame,
  j24TabOnFork,
  j28LeverAndCableCaliper,
  j29LeverAndHydraulicCaliper,
  j31BbInShell,
  j32CrankOnSpindle,
  j33ArmAtChainstay,
  j34RingAtChainstay,
  j35RingOnSpider,
  j36Chainline,
  j37ChainOnTeeth,
  j42ChainOnFixedCentres,
  j43PostInSeatTube,
];
