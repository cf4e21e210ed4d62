/** Which kinds of document are there, and how is one read from plain data? */
import type { z } from "zod";
import { type BuildDoc, buildSchema } from "./build.js";
import { type DonorDoc, donorSchema } from "./donor.js";
import { type IntentDoc, intentSchema, type RiderDoc, type RouteDoc, riderSchema, routeSchema } from "./people.js";
import { type BinDoc, binSchema, type PricesDoc, pricesSchema, type ShopDoc, shopSchema } from "./shop.js";

export type AnyDoc = DonorDoc | RiderDoc | IntentDoc | ShopDoc | BinDoc | PricesDoc | RouteDoc | BuildDoc;
export type DocKind = AnyDoc["kind"];

export const DOCUMENT_SCHEMAS = {
  donor: donorSchema,
  rider: riderSchema,
  intent: intentSchema,
  shop: shopSchema,
  bin: binSchema,
  prices: pricesSchema,
  route: routeSchema,
  build: buildSchema,
} as const satisfies Record<DocKind, z.ZodType>;

export const DOC_KINDS = Object.keys(DOCUMENT_SCHEMAS) as DocKind[];
export type DocOfKind<K extends DocKind> = Extract<AnyDoc, { readonly kind: K }>;
