/** Which light, which units, which decimal sign, and are single keys on? Remembered in this browser. */
import type { DecimalSign } from "@coldset/core/quantity";
import { create } from "zustand";
import { browserKeep } from "./kept.js";

export type Light = "device" | "day" | "dim";
export type Units = "metric" | "inch";

interface Settings {
  readonly light: Light;
  readonly units: Units;
  /** How decimals are shown; both are always read. */
  readonly decimal: DecimalSign;
  readonly keys: boolean;
}

const light = browserKeep.get("light");
const kept = browserKeep.get("decimal");
export const useSettings = create<Settings>()(() => ({
  light: light === "day" || light === "dim" ? light : "device",
  units: browserKeep.get("units") === "inch" ? "inch" : "metric",
  decimal: kept === "comma" || kept === "point" ? kept : decimalOf(globalThis.navigator?.language ?? "en"),
  keys: browserKeep.get("keys") !== "off",
}));

/** The first guess: how the browser's own language writes one and a half. */
export function decimalOf(language: string): DecimalSign {
  const sign = new Intl.NumberFormat(language).formatToParts(1.5).find((part) => part.type === "decimal");
  return sign?.value === "," ? "comma" : "point";
}

/** Marks the root element; without a mark the light follows the device. */
export function showLight(value: Light): void {
  if (value === "device") delete document.documentElement.dataset.light;
  else document.documentElement.dataset.light = value;
}

export function setLight(value: Light): void {
  browserKeep.set("light", value);
  showLight(value);
  useSettings.setState({ light: value });
}

export function setUnits(units: Units): void {
  browserKeep.set("units", units);
  useSettings.setState({ units });
}

export function setDecimal(decimal: DecimalSign): void {
  browserKeep.set("decimal", decimal);
  useSettings.setState({ decimal });
}

export function setKeys(keys: boolean): void {
  browserKeep.set("keys", keys ? "on" : "off");
  useSettings.setState({ keys });
}
