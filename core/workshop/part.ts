/**
 * How is a part described? By kind and by the dimensions of its interfaces (ports), never by a maker's name and never
 * by free text that only a person can read. An attribute that is left out, or written "?", is not known: the joints
 * that need it then say what to measure first.
 */
import { z } from "zod";
import {
  count,
  deg,
  fixed,
  grams,
  id,
  mm,
  money,
  profile,
  ratio,
  text,
  tyreSize,
  unknownable,
  word,
} from "./fields.js";

const u = unknownable;
const axle = () => word(["m10_solid", "m9_solid", "qr_10", "qr_9", "through_12", "through_15", "through_20"]);
const rotorMount = () => word(["six_bolt", "splined", "none"]);
const taper = () => word(["taper_jis", "taper_iso", "spline", "24", "30"]);
const fluid = () => word(["mineral", "glycol"]);
const mount = () => word(["post_74", "tab_51", "flat", "none"]);
const thread = () => text(20);
/** How a rim brake is bolted on: nut behind the crown (6), or recessed sleeve nut (8). */
const brakeBolt = () => word(["nutted_6", "recessed_8"]);

/** Of a hub by itself or in a wheel; rim figures of a rim by itself or in a wheel. */
const FLANGES = { pcd: u(mm(20, 120)), flange_left: u(mm(5, 60)), flange_right: u(mm(5, 60)) } as const;
const RIM = {
  bsd: u(mm(200, 700)),
  rim_inner: u(mm(10, 60)),
  rim_wall: u(mm(0, 5)),
  rim_brake: u(z.boolean()),
  holes: u(count(12, 48)),
  pressure_limit_bar: u(ratio(0.5, 15)),
} as const;
const rearDrive = () => word(["hub_gear", "cassette", "freewheel", "single"]);

const CALIPER = {
  acts: u(word(["cable", "hydraulic"])),
  kind: u(word(["disc", "linear_pull", "cantilever", "side_pull", "centre_pull"])),
  pull: u(mm(3, 25)),
  fluid: u(fluid()),
  fitting: u(text(20)),
  mount: u(mount()),
  /** Rim brakes on studs: for studs this far apart. */
  stud_spacing: u(mm(50, 120)),
  /** Rim brake on one bolt: shortest and longest distance from bolt to pad. */
  reach_min: u(mm(20, 120)),
  reach_max: u(mm(20, 120)),
  bolt: u(brakeBolt()),
  /** And for studs this far from the axle. */
  stud_radius: u(mm(150, 400)),
} as const;

/** Port schemas by part kind. Key = kind; each attribute in mm unless its name says otherwise. */
export const PORTS = {
  fork: {
    axle_to_crown: u(mm(200, 600)),
    rake: u(mm(0, 120)),
    steerer_od: u(mm(20, 45)),
    steerer_length: u(mm(50, 400)),
    steerer_thread_tpi: u(count(20, 30)),
    race_seat: u(mm(24, 45)),
    axle: u(axle()),
    end_width: u(mm(60, 150)),
    /** closed: the end encloses the axle; open_slot: it can drop out. */
    end: u(word(["closed", "open_slot"])),
    /** Slot opening direction, degrees forward from straight down (0 = straight down, 90 = straight forward). */
    end_opens: u(deg(-90, 180)),
    mount: u(mount()),
    /** Rotor diameter that the mount takes without an adapter. */
    mount_rotor: u(mm(100, 260)),
    rated_disc: u(z.boolean()),
    tyre_max: u(tyreSize()),
    blade_inner_at_radius: u(profile()),
    crown_underside_from_axle: u(mm(200, 600)),
    carbon: u(z.boolean()),
    studs: u(z.boolean()),
    brake_bolt: u(brakeBolt()),
  },
  wheel_front: {
    bsd: u(mm(200, 700)),
    rim_inner: u(mm(10, 60)),
    rim_wall: u(mm(0, 5)),
    rim_brake: u(z.boolean()),
    holes: u(count(12, 48)),
    width: u(mm(60, 200)),
    axle: u(axle()),
    rotor_mount: u(rotorMount()),
    /** A hub dynamo's marked voltage and power. */
    dynamo_v: u(ratio(1, 48)),
    dynamo_w: u(ratio(0.5, 20)),
    pressure_limit_bar: u(ratio(0.5, 15)),
  },
  wheel_rear: {
    bsd: u(mm(200, 700)),
    rim_inner: u(mm(10, 60)),
    rim_wall: u(mm(0, 5)),
    rim_brake: u(z.boolean()),
    holes: u(count(12, 48)),
    width: u(mm(60, 250)),
    axle: u(axle()),
    axle_length: u(mm(80, 300)),
    axle_flats: u(mm(5, 14)),
    rotor_mount: u(rotorMount()),
    drive: u(word(["hub_gear", "cassette", "freewheel", "single"])),
    freehub_length: u(mm(20, 50)),
    hub_ratios: u(z.array(ratio(0.1, 6)).min(1).max(20)),
    chainline: u(mm(20, 80)),
    sprocket_min: u(count(8, 40)),
    ring_over_sprocket_min: u(ratio(0.5, 5)),
    locknut_to_smallest: u(mm(0, 60)),
    cogs: u(count(1, 14)),
    cog_pitch: u(mm(0, 10)),
    pressure_limit_bar: u(ratio(0.5, 15)),
  },
  /** Both wheels, sold together. */
  wheel_pair: {
    ...RIM,
    front_width: u(mm(60, 200)),
    front_axle: u(axle()),
    rear_width: u(mm(60, 250)),
    rear_axle: u(axle()),
    rotor_mount: u(rotorMount()),
    drive: u(rearDrive()),
    /** To the middle of the smallest sprocket that comes with it. */
    locknut_to_smallest: u(mm(0, 60)),
    cogs: u(count(1, 14)),
    cog_pitch: u(mm(0, 10)),
  },
  /** Wheels that are still to be built: a pair of rims, hubs, spokes. */
  rim_pair: { ...RIM, erd: u(mm(150, 700)) },
  hub_front: {
    width: u(mm(60, 200)),
    axle: u(axle()),
    holes: u(count(12, 48)),
    rotor_mount: u(rotorMount()),
    ...FLANGES,
  },
  hub_rear: {
    width: u(mm(60, 250)),
    axle: u(axle()),
    axle_length: u(mm(80, 300)),
    holes: u(count(12, 48)),
    rotor_mount: u(rotorMount()),
    drive: u(rearDrive()),
    freehub_length: u(mm(20, 50)),
    /** As it came, where a sprocket set is named with it; else the build's rear_lines say. */
    locknut_to_smallest: u(mm(0, 60)),
    cogs: u(count(1, 14)),
    cog_pitch: u(mm(0, 10)),
    ...FLANGES,
  },
  spokes: {
    gauge: u(mm(1, 4)),
    material: u(text(30)),
    length_min: u(mm(50, 350)),
    length_max: u(mm(50, 350)),
    count: u(count(1, 1000)),
  },
  tyre: { size: u(tyreSize()), pressure_max_bar: u(ratio(0.5, 15)), hooked_only: u(z.boolean()) },
  tube: { bsd: u(mm(200, 700)), width_min: u(mm(15, 130)), width_max: u(mm(15, 130)) },
  headset: {
    cup_od: u(mm(25, 60)),
    steerer_od: u(mm(20, 45)),
    threaded: u(z.boolean()),
    thread_tpi: u(count(20, 30)),
    race_id: u(mm(24, 45)),
    lower_stack: u(mm(0, 60)),
    upper_stack: u(mm(0, 60)),
  },
  stem: {
    clamp_id: u(mm(20, 35)),
    length: u(mm(0, 200)),
    angle: u(deg(-60, 60)),
    bar_clamp: u(mm(20, 40)),
    clamp_height: u(mm(10, 80)),
    bolts: u(count(1, 4)),
  },
  quill_stem: {
    quill_od: u(mm(18, 30)),
    length: u(mm(0, 200)),
    angle: u(deg(-60, 60)),
    bar_clamp: u(mm(20, 40)),
    clamp_height: u(mm(10, 80)),
    raise: u(z.tuple([mm(0, 200), mm(0, 200)])),
  },
  bar: {
    clamp: u(mm(20, 40)),
    grip: u(mm(18, 30)),
    width: u(mm(250, 1000)),
    sweep: u(deg(-90, 120)),
    shape: u(word(["flat", "drop"])),
    reach: u(mm(0, 200)),
    flared: u(z.boolean()),
    hand: u(z.tuple([mm(-400, 400), mm(-400, 400)])),
  },
  lever_pair: {
    acts: u(word(["cable", "hydraulic"])),
    grip: u(mm(18, 30)),
    pull: u(mm(3, 25)),
    fluid: u(fluid()),
    fitting: u(text(20)),
    /** Shifters in the levers: cable per click of the right one, its clicks, and whether the left one works a front derailleur. */
    shift_pull: u(mm(0.5, 12)),
    shift_speeds: u(count(1, 20)),
    shift_front: u(z.boolean()),
  },
  caliper_pair: CALIPER,
  caliper: CALIPER,
  rotor: { mount: u(rotorMount()), diameter: u(mm(100, 260)), thickness: u(mm(0.5, 4)) },
  adapter: { end: u(word(["front", "rear"])), from: u(mount()), to: u(mount()), rotor: u(mm(100, 260)) },
  hose_kit: { fluid: u(fluid()), fitting: u(text(20)), length: u(mm(100, 10000)), count: u(count(1, 4)) },
  cable_kit: {
    inner: u(mm(0.5, 3)),
    inner_length: u(mm(100, 10000)),
    inner_count: u(count(1, 4)),
    outer_length: u(mm(100, 20000)),
  },
  bb: { thread: u(thread()), shell_width: u(mm(50, 150)), spindle: u(taper()), spindle_length: u(mm(80, 180)) },
  crank: {
    spindle: u(taper()),
    length: u(mm(80, 220)),
    /** The spindle length on which q, z0 and the chainline hold. */
    design_spindle: u(mm(80, 180)),
    q: u(mm(100, 260)),
    z0: u(mm(10, 120)),
    t_end: u(mm(5, 30)),
    chainline: u(mm(20, 80)),
    bolt_circle: u(mm(40, 160)),
    /** Of the small ring, where the spider has one of its own. */
    bolt_circle_inner: u(mm(40, 160)),
    ring: u(count(18, 70)),
    /** Where it carries more than one. */
    rings: u(z.array(count(18, 70)).min(1).max(3)),
    /** Rings of the crank, by teeth: how far each stands from the centre plane, on the design spindle. */
    ring_chainlines: u(profile()),
  },
  ring: { bolt_circle: u(mm(40, 160)), teeth: u(count(18, 70)), chain_class: u(word(["wide", "narrow"])) },
  sprocket: { fits: u(word(["hub_gear", "single"])), teeth: u(count(8, 50)), chain_class: u(word(["wide", "narrow"])) },
  cassette: { cogs: u(z.array(count(8, 60)).min(1).max(14)), pitch: u(mm(2, 8)), spline: u(text(30)) },
  cassette_spacer: { thickness: u(mm(0.1, 10)) },
  derailleur_front: {
    /** Tube that the clamp goes round. */
    clamp: u(mm(20, 45)),
    cable_from: u(word(["top", "bottom"])),
    /** Largest ring that its cage is shaped for. */
    ring_max: u(count(18, 70)),
    rings: u(count(2, 3)),
  },
  quill_adapter: { quill_od: u(mm(18, 30)), steerer_od: u(mm(20, 45)) },
  studs: { for: u(word(["cantilever"])), material: u(text(30)) },
  brazing_rod: { silver_percent: u(ratio(0, 100)), cadmium_free: u(z.boolean()), flux: u(z.boolean()) },
  tape: { material: u(text(30)) },
  chain: { class: u(word(["wide", "6-8", "9", "10", "11", "12"])), links: u(count(20, 300)) },
  chain_tensioner: { to: u(word(["hanger_m10", "bolt_on"])) },
  washers: { axle: u(axle()), flats: u(mm(5, 14)), slot: u(word(["vertical_slot", "horizontal_slot"])) },
  shifter: {
    speeds: u(count(1, 20)),
    for: u(word(["hub_gear", "derailleur"])),
    grip: u(mm(18, 30)),
    pull: u(mm(0.5, 12)),
    works: u(word(["trigger", "twist", "lever"])),
    friction: u(z.boolean()),
    stands_on: u(word(["bar", "down_tube"])),
    side: u(word(["left", "right"])),
  },
  guards: { bsd: u(z.array(mm(200, 700)).min(1).max(6)), width: u(mm(20, 120)), stays: u(thread()) },
  rack: { class_kg: u(ratio(1, 60)), bolts: u(thread()), width: u(mm(50, 300)) },
  child_seat: {
    mount: u(word(["seat_tube", "rack"])),
    /** What the seat's own sheet asks of a round seat tube and of the free length on it. */
    tube_od_min: u(mm(15, 60)),
    tube_od_max: u(mm(15, 60)),
    tube_free: u(mm(20, 400)),
    /** What it asks of a rack. */
    rack_class_kg: u(ratio(1, 60)),
    rack_width_min: u(mm(50, 300)),
    rack_width_max: u(mm(50, 300)),
    child_min_kg: u(ratio(1, 60)),
    child_max_kg: u(ratio(1, 60)),
  },
  stand: {
    legs: u(count(1, 2)),
    held_at: u(word(["plate_above_bb", "chainstay", "rear_triangle"])),
    class_kg: u(ratio(1, 300)),
    width: u(mm(20, 600)),
  },
  derailleur_rear: {
    /** Cage way in mm for each mm of cable. */
    ratio: u(ratio(0.3, 4)),
    largest_cog: u(count(15, 60)),
    capacity: u(count(5, 80)),
    hanger: u(thread()),
  },
  pads: {
    for: u(word(["disc", "linear_pull", "cantilever", "side_pull"])),
    post: u(word(["threaded", "smooth"])),
    compound: u(text(30)),
  },
  chain_guard: { ring: u(count(18, 70)) },
  spoke_guard: { keeps_out: u(word(["child_feet", "chain", "coat"])) },
  spring_cover: { for: u(word(["saddle"])) },
  bell_reflectors: { pieces: u(count(1, 12)) },
  post: {
    od: u(mm(20, 40)),
    length: u(mm(100, 600)),
    setback: u(mm(-40, 60)),
    rail: u(mm(5, 10)),
    mark_from_bottom: u(mm(20, 200)),
  },
  saddle: {
    rail: u(mm(5, 10)),
    height_above_clamp: u(mm(10, 100)),
    rail_range: u(mm(0, 60)),
    /** Open coil springs under a saddle pinch a child's fingers. */
    springs: u(word(["none", "open", "covered"])),
  },
  plate: { thickness: u(mm(0.5, 30)), width: u(mm(5, 2000)), length: u(mm(5, 2000)) },
  axle_kit: { thread: u(thread()), length: u(mm(50, 300)) },
  rivet_nuts: { thread: u(thread()), grip_min: u(mm(0.1, 10)), grip_max: u(mm(0.1, 20)) },
  light_set: { supply: u(word(["dynamo_6v", "battery"])) },
  paint: { kind: u(word(["1k_aerosol", "2k", "powder", "brush"])), volume_ml: u(ratio(1, 10000)) },
  spacers: { steerer_od: u(mm(20, 45)), height: u(mm(0.5, 60)) },
} as const;

export type PartKind = keyof typeof PORTS;

/** Part kinds by place: what may stand there. */
const common = {
  id: id(),
  condition: word(["A", "B", "C"]),
  mass: unknownable(grams()),
  cost: unknownable(money()),
  qty: count(1, 1000)
    .optional()
    .transform((v) => v ?? 1),
  delivery_days: z.number().min(0).max(365).optional(),
  /** The donor's own part, in its place today: what does not change needs no new measuring. */
  own: z.boolean().optional(),
  note: text(200).optional(),
  lies: text(120).optional(),
};

function partOf<K extends PartKind>(kind: K) {
  return fixed({ ...common, kind: z.literal(kind), ports: fixed(PORTS[kind] as (typeof PORTS)[K]) });
}
type PartOf<K extends PartKind> = { readonly [P in K]: z.output<ReturnType<typeof partOf<P>>> }[K];

const KINDS = Object.keys(PORTS) as PartKind[];
const SCHEMAS = Object.fromEntries(KINDS.map((kind) => [kind, partOf(kind)])) as {
  [K in PartKind]: ReturnType<typeof partOf<K>>;
};

export type Part = { [K in PartKind]: PartOf<K> }[PartKind];
export type PartOfKind<K extends PartKind> = Extract<Part, { readonly kind: K }>;

const kindWord = word(KINDS as [PartKind, ...PartKind[]]);

/**
 * Parts that were read already, by the plain data itself, which nobody changes: an edit of one part of a bin leaves the
 * others as they are, and they need not be read again.
 */
const known = new WeakMap<object, Part>();

/** A part of the bin. The kind decides which ports are read. */
export const partSchema = z.unknown().transform((given, ctx): Part => {
  const before = typeof given === "object" && given !== null ? known.get(given) : undefined;
  if (before !== undefined) return before;
  const kind = (given as { kind?: unknown } | null)?.kind;
  const named = kindWord.safeParse(kind);
  const result = named.success ? SCHEMAS[named.data].safeParse(given) : undefined;
  if (result?.success) {
    const part = result.data as unknown as Part;
    known.set(given as object, part);
    return part;
  }
  for (const issue of named.success ? (result?.error?.issues ?? []) : named.error.issues) {
    ctx.issues.push({
      // With its own code: a list of branches (number, or "?") is told by its most telling one, as everywhere.
      ...(issue as unknown as Record<string, unknown>),
      message: issue.message,
      path: named.success ? issue.path : ["kind"],
      input: given,
    } as never);
  }
  return z.NEVER;
});
