// The bill of materials: every package of the lock file with its version, licence and fingerprint, and what needs what, in the form
// of CycloneDX 1.6 (ECMA-424). Made from the lock file alone, so that the same lock file gives the same bill. The build puts it
// beside the page (licences.ts), `npm run bill` prints it.

interface LockedPackage {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
}

/** package-lock.json, version 3: packages by the folder they are put in, '' for the project itself. */
export interface LockFile {
  readonly name: string;
  readonly version: string;
  readonly packages: Readonly<Record<string, LockedPackage>>;
}

type Licence = { readonly license: { readonly id: string } } | { readonly expression: string };

export interface Component {
  readonly type: 'application' | 'library';
  readonly 'bom-ref': string;
  readonly group?: string;
  readonly name: string;
  readonly version: string;
  /** excluded: for building and testing, and not in what is shipped. */
  readonly scope?: 'required' | 'optional' | 'excluded';
  readonly hashes?: readonly { readonly alg: string; readonly content: string }[];
  readonly licenses?: readonly Licence[];
  readonly purl?: string;
}

export interface Bill {
  readonly $schema: string;
  readonly bomFormat: 'CycloneDX';
  readonly specVersion: '1.6';
  readonly version: 1;
  readonly metadata: { readonly component: Component };
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}

const FOLDER = 'node_modules/';

export function billOfMaterials(lock: LockFile): Bill {
  const root = lock.packages[''] ?? {};
  const ref = `${lock.name}@${lock.version}`;
  const paths = Object.keys(lock.packages).filter((path) => path !== '');
  const needs = (path: string, wanted: LockedPackage): readonly string[] => [
    ...new Set(namesWanted(wanted).flatMap((name) => placeOf(name, path, lock) ?? [])),
  ];
  return {
    $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: {
      component: {
        type: 'application',
        'bom-ref': ref,
        name: lock.name,
        version: lock.version,
        ...licensesOf(root),
      },
    },
    components: paths.map((path) => componentOf(path, lock.packages[path] ?? {})),
    dependencies: [
      { ref, dependsOn: needs('', root) },
      ...paths.map((path) => ({ ref: path, dependsOn: needs(path, lock.packages[path] ?? {}) })),
    ],
  };
}

function namesWanted(given: LockedPackage): readonly string[] {
  const { dependencies, devDependencies, optionalDependencies, peerDependencies } = given;
  return [dependencies, devDependencies, optionalDependencies, peerDependencies].flatMap((names) =>
    Object.keys(names ?? {}),
  );
}

/** Where Node finds a package that another asks for: in its own folder, or in one further up. */
function placeOf(name: string, from: string, { packages }: LockFile): string | undefined {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf(`/${FOLDER}`)))) {
    const place = folder === '' ? `${FOLDER}${name}` : `${folder}/${FOLDER}${name}`;
    if (Object.hasOwn(packages, place)) return place;
    if (folder === '') return undefined;
  }
}

function componentOf(path: string, found: LockedPackage): Component {
  const full = found.name ?? path.slice(path.lastIndexOf(FOLDER) + FOLDER.length);
  const [group, name] = full.startsWith('@') ? full.split('/') : [undefined, full];
  const version = found.version ?? '';
  return {
    type: 'library',
    'bom-ref': path,
    ...(group === undefined ? {} : { group }),
    name: name ?? full,
    version,
    scope: found.dev === true ? 'excluded' : found.optional === true ? 'optional' : 'required',
    ...hashesOf(found),
    ...licensesOf(found),
    purl: `pkg:npm/${group === undefined ? '' : `${encodeURIComponent(group)}/`}${name ?? full}@${version}`,
  };
}

/** 'sha512-' and base64, as lock files have it, into hexadecimal. */
function hashesOf({ integrity }: LockedPackage): Pick<Component, 'hashes'> {
  const hashes = (integrity ?? '').split(' ').flatMap((one) => {
    const [, size, base64] = /^sha(1|256|384|512)-([\w+/=]+)$/.exec(one) ?? [];
    if (size === undefined || base64 === undefined) return [];
    return [{ alg: `SHA-${size}`, content: Buffer.from(base64, 'base64').toString('hex') }];
  });
  return hashes.length === 0 ? {} : { hashes };
}

function licensesOf({ license }: LockedPackage): Pick<Component, 'licenses'> {
  if (license === undefined) return {};
  return { licenses: [/ (?:AND|OR|WITH) /.test(license) ? { expression: license } : { license: { id: license } }] };
}
