/** In which order do the twenty questions stand? By stake, then open before settled, refusals and gates first. */

import { allClear } from "./asked/all-clear.js";
import { axleInSlot } from "./asked/axle-in-slot.js";
import { beforeItGoesOut } from "./asked/before-it-goes-out.js";
import { brakeTab } from "./asked/brake-tab.js";
import { fitsRider } from "./asked/fits-rider.js";
import { forkDoes } from "./asked/fork-does.js";
import { frameSound } from "./asked/frame-sound.js";
import { frontWheelOut } from "./asked/front-wheel-out.js";
import { maySpread } from "./asked/may-spread.js";
import { misMeasured } from "./asked/mis-measured.js";
import { hoseAndCable, looksIntended, mendOrReject, weldNearBraze } from "./asked/not-in-yet.js";
import { oddPartsWork } from "./asked/odd-parts-work.js";
import { ringsAndChain } from "./asked/rings-and-chain.js";
import { whatToBuy } from "./asked/what-to-buy.js";
import { whichAdvert } from "./asked/which-advert.js";
import { whichOrder } from "./asked/which-order.js";
import { worthIt } from "./asked/worth-it.js";
import type { BoardRow } from "./board.js";
import type { Question, Reckoned } from "./question.js";

const QUESTIONS: readonly Question[] = [
  frontWheelOut,
  frameSound,
  whichAdvert,
  fitsRider,
  forkDoes,
  allClear,
  maySpread,
  axleInSlot,
  brakeTab,
  weldNearBraze,
  oddPartsWork,
  ringsAndChain,
  misMeasured,
  whatToBuy,
  whichOrder,
  mendOrReject,
  looksIntended,
  hoseAndCable,
  worthIt,
  beforeItGoesOut,
];

const STAKE = { hurt: 0, money: 1, time: 2 } as const;

/** Open rows first, then settled, then those that are not in yet. Within that the number of the question. */
function standing(row: BoardRow): number {
  if (row.verdict === "not checked yet") return 3;
  if (!row.open) return 2;
  return row.verdict === "refuse" ? 0 : 1;
}

export function boardOf(r: Reckoned): readonly BoardRow[] {
  return QUESTIONS.map((q) => q(r)).sort(
    (a, b) => STAKE[a.stake] - STAKE[b.stake] || standing(a) - standing(b) || a.n - b.n,
  );
}
