/**
 * How much weight is left on the front wheel of this build, empty and loaded? From the places entered in the build's
 * load_model and the axles after the change. A weight whose place or mass is not entered leaves its row out, and is named.
 */

import { type LoadShare, loadShare, type Weight } from "../mechanics/index.js";
import { say } from "../texts/say.js";
import type { Reckoned } from "./question.js";

export interface LoadRow {
  readonly what: string;
  readonly share: LoadShare;
}
export interface LoadOfBuild {
  readonly rows: readonly LoadRow[];
  readonly missing: readonly string[];
}

type Place = readonly [number, number] | undefined;

export function loadOfBuild(r: Reckoned): LoadOfBuild | undefined {
  const { build, rider, at } = r.resolved;
  const model = build.load_model;
  const points = r.after?.points;
  if (model === undefined || points === undefined) return undefined;
  const axles = { rearForwardMm: points.rearAxle.x, frontForwardMm: points.frontAxle.x };
  const missing: string[] = [];
  const weight = (what: string, kg: number | undefined, place: Place): Weight | undefined => {
    if (kg !== undefined && place !== undefined) return { kg, forwardMm: place[0], heightMm: place[1] };
    missing.push(
      kg === undefined
        ? say("questions.load-of-build.what-weighs", { what })
        : say("questions.load-of-build.where-sits", { what }),
    );
    return undefined;
  };
  const seat = at.child_seat?.kind === "child_seat" ? at.child_seat : undefined;
  const seatKg = seat?.mass === undefined ? undefined : seat.mass / 1000;
  const bike = weight(say("questions.load-of-build.the-bicycle"), model.bike_kg, model.bike_at);
  const person = weight(say("questions.load-of-build.the-rider"), rider.mass, model.rider_at);
  const child =
    seat === undefined
      ? undefined
      : weight(
          say("questions.load-of-build.the-child-with-its-seat"),
          rider.child_kg === undefined || seatKg === undefined ? undefined : rider.child_kg + seatKg,
          seat.ports.mount === "rack" ? model.child_on_rack_at : model.child_on_tube_at,
        );
  const bags =
    rider.bags_kg === undefined || model.bags_on === "none"
      ? undefined
      : weight(
          say("questions.load-of-build.the-bags"),
          rider.bags_kg,
          model.bags_on === "front_basket" ? model.bags_in_basket_at : model.bags_on_rack_at,
        );
  if (bike === undefined || person === undefined) return { rows: [], missing };
  const row = (what: string, more: readonly (Weight | undefined)[]): readonly LoadRow[] => {
    const all = more.filter((w) => w !== undefined);
    const share = all.length < more.length ? undefined : loadShare([bike, person, ...all], axles);
    return share === undefined ? [] : [{ what, share }];
  };
  return {
    rows: [
      ...row(say("questions.load-of-build.rider-alone"), []),
      ...(seat === undefined ? [] : row(say("questions.load-of-build.with-the-child"), [child])),
      ...(bags === undefined ? [] : row(say("questions.load-of-build.with-the-bags"), [bags])),
      ...(seat === undefined || bags === undefined
        ? []
        : row(say("questions.load-of-build.with-child-and-bags"), [child, bags])),
    ],
    missing,
  };
}
