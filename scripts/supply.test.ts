/** Can somebody slip other code into an installation? What the lockfile and the manifests must say against it. */
import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { ROOT } from "./setup.mjs";

interface Locked {
  readonly link?: boolean;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
}
type Packages = Readonly<Record<string, Locked>>;
type Manifest = Readonly<Record<string, Readonly<Record<string, string>> | undefined>>;

const json = (...place: readonly string[]) => JSON.parse(fs.readFileSync(path.join(ROOT, ...place), "utf8"));

/** What of a lockfile could bring in other bytes than those that were looked at, or run something when it comes in. */
function lockFaults(packages: Packages): readonly string[] {
  const others = Object.entries(packages).filter(([place, p]) => place.startsWith("node_modules/") && p.link !== true);
  return others.flatMap(([place, { integrity = "", hasInstallScript }]) => [
    ...(/^sha512-[\w+/]{86}==$/.test(integrity) ? [] : [`${place}: no SHA-512`]),
    ...(hasInstallScript === true ? [`${place}: runs something when it is installed`] : []),
  ]);
}

function manifestFaults(manifest: Manifest): readonly string[] {
  return ["dependencies", "devDependencies", "optionalDependencies", "overrides"].flatMap((group) =>
    Object.entries(manifest[group] ?? {}).flatMap(([name, version]) =>
      /^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version) ? [] : [`${name}: ${version} is not one version`],
    ),
  );
}

describe("what is installed", () => {
  it("is held to the byte by the lockfile, and none of it runs anything when it is installed", () => {
    const { packages } = json("package-lock.json") as { packages: Packages };
    expect(Object.keys(packages).length).toBeGreaterThan(100);
    expect(lockFaults(packages)).toEqual([]);
    expect(
      lockFaults({
        "node_modules/a": {},
        "node_modules/b": { integrity: `sha512-${"A".repeat(86)}==`, hasInstallScript: true },
        "node_modules/c": { integrity: "sha1-AAAA" },
      }),
    ).toEqual([
      "node_modules/a: no SHA-512",
      "node_modules/b: runs something when it is installed",
      "node_modules/c: no SHA-512",
    ]);
  });

  it("is named by one exact version each", () => {
    const root = json("package.json") as Manifest & { workspaces: readonly string[] };
    for (const place of [[], ...root.workspaces.map((w) => [w])])
      expect(manifestFaults(json(...place, "package.json")), place.join("/")).toEqual([]);
    expect(
      manifestFaults({ dependencies: { a: "^1.0.0", b: "1.0.0", c: "https://workshop.example/c.tgz" } }),
    ).toHaveLength(2);
  });

  it("comes in by the lockfile alone, with scripts of packages switched off", () => {
    const setup = fs.readFileSync(path.join(ROOT, "scripts", "setup.mjs"), "utf8");
    const call = /const args = \[([^\]]*)\]/.exec(setup)?.[1] ?? "";
    expect(call).toContain('"ci"');
    expect(call).toContain('"--ignore-scripts"');
    expect(setup).not.toMatch(/\["install"|npm install/);
  });
});
