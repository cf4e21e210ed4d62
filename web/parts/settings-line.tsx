/** How does this page show things? Units, decimal sign and single keys; remembered in this browser, asked at every page's end. */

import type { DecimalSign } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import { setDecimal, setKeys, setUnits, type Units, useSettings } from "../state/settings.js";

export function SettingsLine({ single }: { readonly single: boolean }) {
  const { units, decimal, keys } = useSettings();
  return (
    <section className="settings" aria-label={say("web.settings-line.how-this-page-shows-things")}>
      <label>
        {say("web.settings-line.units")}
        <select value={units} onChange={(event) => setUnits(event.currentTarget.value as Units)}>
          <option value="metric">{say("web.settings-line.mm-kg")}</option>
          <option value="inch">{say("web.settings-line.inch-lb")}</option>
        </select>
      </label>
      <label>
        {say("web.settings-line.decimals")}
        <select value={decimal} onChange={(event) => setDecimal(event.currentTarget.value as DecimalSign)}>
          <option value="point">{say("web.settings-line.with-a-point")}</option>
          <option value="comma">{say("web.settings-line.with-a-comma")}</option>
        </select>
      </label>
      <p>
        {say("web.settings-line.whatever-stands-here-either-is-read")}
        {units === "inch" ? say("web.settings-line.a-length-without-a-unit-is") : ""}
      </p>
      {single ? (
        <p className="foot-keys">
          <span>{say("web.settings-line.single-keys-1-to-20-open")}</span>
          <button type="button" className="btn" aria-pressed={keys} onClick={() => setKeys(!keys)}>
            {keys ? say("web.settings-line.keys-are-on") : say("web.settings-line.keys-are-off")}
          </button>
        </p>
      ) : null}
    </section>
  );
}
