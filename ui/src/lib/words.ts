import { FluentBundle, FluentResource } from '@fluent/bundle';
import type { Arg } from '../gen/Arg';
import type { Message } from '../gen/Message';

const FILES = import.meta.glob<string>('../../../core/messages/*.ftl', { query: '?raw', import: 'default', eager: true });

const bundle = new FluentBundle('en', { useIsolating: false });
for (const text of Object.values(FILES)) bundle.addResource(new FluentResource(text), { allowOverrides: true });

/** A message in words. An id that the catalogue lacks is shown as it stands. */
export function say(message: Message): string {
  const pattern = bundle.getMessage(message.id)?.value;
  if (!pattern) return message.id;
  const args: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(message.args ?? {})) args[name] = flat(value);
  const problems: Error[] = [];
  return bundle.formatPattern(pattern, args, problems);
}

/** A message of the page's own. */
export function ui(id: `ui-${string}`, args?: Record<string, Arg>): string {
  return say(args ? { id, args } : { id });
}

function flat(value: Arg): string | number {
  return typeof value === 'object' ? say(value) : value;
}
