/**
 * How many pitches long is the tight chain, and at which centre distance is a chain of so many pitches tight?
 * Inputs: chainstayMm = BB to axle, straight, 100..2000; ring and cog in teeth; pitchMm, 12.7 on every bicycle.
 * Formula (chain-drive handbooks, ISO 606 annex): n = 2 C / p + (N1 + N2) / 2 + (p / C) ((N1 - N2) / 2 pi)^2. It lies
 *   within 0.003 pitch of the true polygon; the form with circle arcs is 0.04 to 0.09 pitch too long, 0.4 mm of centre
 *   distance, and must not be used for fixed centres.
 * Solved for C: with m = n - (N1 + N2) / 2 and k = (N1 - N2) / 2 pi, C = p (m + sqrt(m^2 - 8 k^2)) / 4.
 * Sources: iso-606, drive-chain-length.
 */
export const CHAIN_PITCH_MM = 12.7;

export interface ChainDrive {
  readonly ring: number;
  readonly cog: number;
  readonly pitchMm?: number;
}

export function chainPitches(q: ChainDrive & { readonly chainstayMm: number }): number {
  const pitch = q.pitchMm ?? CHAIN_PITCH_MM;
  const k = (q.ring - q.cog) / (2 * Math.PI);
  return (2 * q.chainstayMm) / pitch + (q.ring + q.cog) / 2 + (pitch / q.chainstayMm) * k * k;
}

/** Centre distance in mm at which `links` pitches are tight; NaN where so short a chain closes round nothing. */
export function centreForLinks(q: ChainDrive & { readonly links: number }): number {
  const pitch = q.pitchMm ?? CHAIN_PITCH_MM;
  const m = q.links - (q.ring + q.cog) / 2;
  const k = (q.ring - q.cog) / (2 * Math.PI);
  return m <= 0 ? Number.NaN : (pitch * (m + Math.sqrt(m * m - 8 * k * k))) / 4;
}

/** By how many mm the centre distance grows when the chain grows by one pitch: 1 / (2/p - p k^2 / C^2), about p / 2. */
export function centrePerPitch(q: ChainDrive & { readonly chainstayMm: number }): number {
  const pitch = q.pitchMm ?? CHAIN_PITCH_MM;
  const k = (q.ring - q.cog) / (2 * Math.PI);
  return 1 / (2 / pitch - (pitch * k * k) / q.chainstayMm ** 2);
}

/**
 * How many links does a chain with a derailleur need?
 * Answer: largest ring on largest cog plus one link pair, rounded up to an even number. Common practice.
 */
export function derailleurChainLinks(q: {
  readonly chainstayMm: number;
  readonly largestRing: number;
  readonly largestCog: number;
  readonly pitchMm?: number;
}): number {
  const tight = chainPitches({ ...q, ring: q.largestRing, cog: q.largestCog });
  // A hair over an even number from rounding is not a reason for two more links.
  return 2 * Math.ceil((tight + 2) / 2 - 1e-9);
}
