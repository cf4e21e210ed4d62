/** Which light, which units, and are single keys on? Remembered in this browser. */
import { create } from "zustand";
import { browserKeep } from "./kept.js";

export type Light = "device" | "day" | "dim";
export type Units = "metric" | "inch";

interface Settings {
  readonly light: Light;
  readonly units: Units;
  readonly keys: boolean;
}

const light = browserKeep.get("light");
export const useSettings = create<Settings>()(() => ({
  light: light === "day" || light === "dim" ? light : "device",
  units: browserKeep.get("units") === "inch" ? "inch" : "metric",
  keys: browserKeep.get("keys") !== "off",
}));

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

export function setKeys(keys: boolean): void {
  browserKeep.set("keys", keys ? "on" : "off");
  useSettings.setState({ keys });
}
