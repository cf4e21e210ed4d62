/**
 * Which wheels stand in a build whose wheels were chosen as a pair, or as hubs and rims still to be built? A wheel chosen
 * whole goes first, then the pair, then hub with rim. The wheel bears the id of its hub (or of the pair); what it costs and
 * weighs stays with the parts that are bought.
 */
import type { Part, PartOfKind } from "./part.js";
import type { Place } from "./words.js";

type At = Readonly<Partial<Record<Place, Part>>>;
type Front = PartOfKind<"wheel_front">;
type Rear = PartOfKind<"wheel_rear">;
type Conditions = readonly Part["condition"][];

export function withWheels(at: At): At {
  const front = at.wheel_front ?? frontOf(at);
  const rear = at.wheel_rear ?? rearOf(at);
  return {
    ...at,
    ...(front === undefined ? {} : { wheel_front: front }),
    ...(rear === undefined ? {} : { wheel_rear: rear }),
  };
}

/** Places whose part makes up a wheel. */
export const PLACES_OF_A_WHEEL: readonly Place[] = ["wheels", "rims", "hub_front", "hub_rear"];

/** The same places with another part in one of those that make up a wheel: both wheels are put together again. */
export function wheelsAgain(at: At, place: Place, part: Part): At {
  const { wheel_front: _front, wheel_rear: _rear, wheels: _wheels, ...rest } = at;
  // A single hub or a pair of rims in place of a whole pair takes the pair out; the other hub stays where it was chosen.
  return withWheels({ ...rest, [place]: part });
}

const WORST: Conditions = ["C", "B", "A"];
const worse = (all: Conditions) => WORST.find((c) => all.includes(c)) ?? "C";

/** The part that the rim's figures are entered at: the rims by themselves, or the wheel. */
export function rimPartId(at: At, end: "front" | "rear"): string | undefined {
  const wheel = at[end === "front" ? "wheel_front" : "wheel_rear"];
  const hub = at[end === "front" ? "hub_front" : "hub_rear"];
  return wheel !== undefined && hub?.id === wheel.id && at.rims !== undefined ? at.rims.id : wheel?.id;
}

function rimOf(rims: PartOfKind<"rim_pair"> | PartOfKind<"wheel_pair"> | undefined) {
  const { bsd, rim_inner, rim_wall, rim_brake, pressure_limit_bar } = rims?.ports ?? {};
  return { bsd, rim_inner, rim_wall, rim_brake, pressure_limit_bar };
}

const bare = (id: string, condition: Part["condition"]) => ({
  id,
  condition,
  mass: undefined,
  cost: undefined,
  qty: 1,
});

function frontOf(at: At): Front | undefined {
  const pair = at.wheels?.kind === "wheel_pair" ? at.wheels : undefined;
  if (pair !== undefined) {
    const { front_width: width, front_axle: axle, rotor_mount, holes } = pair.ports;
    return {
      ...bare(pair.id, pair.condition),
      kind: "wheel_front",
      ports: { ...rimOf(pair), width, axle, rotor_mount, holes },
    } as Front;
  }
  const hub = at.hub_front?.kind === "hub_front" ? at.hub_front : undefined;
  if (hub === undefined) return undefined;
  const rims = at.rims?.kind === "rim_pair" ? at.rims : undefined;
  const { width, axle, rotor_mount, holes } = hub.ports;
  return {
    ...bare(hub.id, worse([hub.condition, ...(rims === undefined ? [] : [rims.condition])])),
    kind: "wheel_front",
    ports: { ...rimOf(rims), width, axle, rotor_mount, holes },
  } as Front;
}

function rearOf(at: At): Rear | undefined {
  const pair = at.wheels?.kind === "wheel_pair" ? at.wheels : undefined;
  if (pair !== undefined) {
    const { rear_width: width, rear_axle: axle, rotor_mount, holes, drive } = pair.ports;
    const { locknut_to_smallest, cogs, cog_pitch } = pair.ports;
    return {
      ...bare(pair.id, pair.condition),
      kind: "wheel_rear",
      ports: { ...rimOf(pair), width, axle, rotor_mount, holes, drive, locknut_to_smallest, cogs, cog_pitch },
    } as Rear;
  }
  const hub = at.hub_rear?.kind === "hub_rear" ? at.hub_rear : undefined;
  if (hub === undefined) return undefined;
  const rims = at.rims?.kind === "rim_pair" ? at.rims : undefined;
  const { pcd: _pcd, flange_left: _left, flange_right: _right, ...ports } = hub.ports;
  return {
    ...bare(hub.id, worse([hub.condition, ...(rims === undefined ? [] : [rims.condition])])),
    kind: "wheel_rear",
    ports: { ...rimOf(rims), ...ports },
  } as Rear;
}
