import type { EntryId } from '../gen/EntryId';
import type { Birth } from './birth.svelte';
import { notSaved } from './failures.svelte';
import { feel } from './feedback';
import { keepFile } from './pictures';
import { rest } from './rest';
import { Tape } from './tape';
import { ago } from './touch';
import { asApiError } from './transport';
import { ui } from './words';

/** A note ends by itself at 30 minutes and at 16 MiB. (ours) */
const MOST_MS = 30 * 60_000;
const MOST_BYTES = 16 * 1024 * 1024;
/** Enough for speech; half an hour of it has some 7 MB. (ours) */
const BITS_PER_SECOND = 32_000;
/** The recorder hands over what it has once a second, so that little hangs on its end. */
const SLICE_MS = 1000;
const BEAT_MS = 250;
/** The first that the device can make. */
const MEDIA = ['audio/webm;codecs=opus', 'audio/mp4', 'audio/ogg;codecs=opus'];
const PROBLEMS: Record<string, `ui-${string}`> = {
  NotAllowedError: 'ui-voice-not-permitted',
  SecurityError: 'ui-voice-not-permitted',
  NotFoundError: 'ui-voice-no-microphone',
  // So says one web view where there is none.
  OverconstrainedError: 'ui-voice-no-microphone',
  NotReadableError: 'ui-voice-in-use',
};

type Standing = 'still' | 'asking' | 'recording' | 'paused' | 'keeping';

/** A recording on its way. What was spoken is in memory only until the core has sealed it. */
interface Run {
  birth: Birth;
  placenta: number | null;
  recorder: MediaRecorder;
  stream: MediaStream;
  tape: Tape;
  begun: number;
  parts: Blob[];
  bytes: number;
  beat: ReturnType<typeof setInterval>;
}

/** The one voice note that may run. */
class Dictation {
  standing = $state<Standing>('still');
  /** How long it is, ms. */
  ms = $state(0);
  /** Why there is none, or why it ended by itself. */
  problem = $state<string | null>(null);
  /** The entry of the last one that was kept. */
  kept = $state<EntryId | null>(null);
  #run: Run | null = null;
  /** The end of the last one: it is on disk, or its failure is told. */
  #ending: Promise<void> = Promise.resolve();
  /** The item that is on the screen. */
  #item: string | null = null;

  /** Whether this device can record at all. */
  get available(): boolean {
    return media() !== undefined && navigator.mediaDevices !== undefined;
  }

  async begin(birth: Birth, placenta: number | null): Promise<void> {
    if (this.standing !== 'still') return;
    this.problem = null;
    this.standing = 'asking';
    let stream: MediaStream | undefined;
    try {
      stream = await navigator.mediaDevices.getUserMedia({ audio: true });
      if (this.#called()) this.#start(birth, placenta, stream);
      else stream.getTracks().forEach((track) => track.stop());
    } catch (cause) {
      stream?.getTracks().forEach((track) => track.stop());
      feel('failed');
      this.problem = ui(PROBLEMS[cause instanceof Error ? cause.name : ''] ?? 'ui-voice-failed');
      this.standing = 'still';
    }
  }

  #start(birth: Birth, placenta: number | null, stream: MediaStream): void {
    const mimeType = media();
    const recorder = new MediaRecorder(stream, { audioBitsPerSecond: BITS_PER_SECOND, ...(mimeType ? { mimeType } : {}) });
    recorder.start(SLICE_MS);
    const begun = performance.now();
    const beat = setInterval(this.#beat, BEAT_MS);
    const run: Run = { birth, placenta, recorder, stream, tape: new Tape(begun, this.#item), begun, parts: [], bytes: 0, beat };
    recorder.ondataavailable = ({ data }) => {
      run.parts.push(data);
      run.bytes += data.size;
    };
    recorder.onerror = () => void this.finish('ui-voice-broke-off');
    for (const track of stream.getTracks()) track.onended = () => void this.finish('ui-voice-broke-off');
    document.addEventListener('visibilitychange', this.#hidden);
    this.#run = run;
    this.ms = 0;
    this.standing = 'recording';
    feel('mark');
  }

  /** Whether the microphone is still waited for. */
  #called(): boolean {
    return this.standing === 'asking';
  }

  /** Another item is on the screen, or none. A note is about one placenta. */
  turn(placenta: number, item: string | null): void {
    this.#item = item;
    if (item !== null && this.#run && this.#run.placenta !== placenta) void this.finish('ui-voice-other-placenta');
    else this.#run?.tape.turn(item, performance.now());
  }

  pause(): void {
    if (!this.#run || this.standing !== 'recording') return;
    this.#run.recorder.pause();
    this.#run.tape.pause(performance.now());
    this.standing = 'paused';
    feel('undo');
  }

  resume(): void {
    if (!this.#run || this.standing !== 'paused') return;
    this.#run.recorder.resume();
    this.#run.tape.resume(performance.now());
    this.standing = 'recording';
    feel('mark');
  }

  /** Ends the note and keeps it; done at once where there is none. What cannot be kept is told, and can be tried again. */
  async finish(why?: `ui-${string}`): Promise<void> {
    const run = this.#run;
    this.#run = null;
    if (run) this.#ending = this.#end(run, why);
    else if (this.#called()) this.standing = 'still';
    await this.#ending;
  }

  async #end(run: Run, why: `ui-${string}` | undefined): Promise<void> {
    this.standing = 'keeping';
    this.problem = why ? ui(why) : null;
    clearInterval(run.beat);
    document.removeEventListener('visibilitychange', this.#hidden);
    const end = performance.now();
    run.tape.pause(end);
    await stopped(run.recorder);
    for (const track of run.stream.getTracks()) {
      track.onended = null;
      track.stop();
    }
    const sound = new Blob(run.parts);
    const [ms, chapters, media] = [run.tape.ms(end), run.tape.chapters(end), run.recorder.mimeType];
    if (sound.size === 0 || ms === 0) {
      this.problem ??= ui('ui-voice-empty');
      feel('failed');
    } else {
      await keep(run, sound, { ms, chapters, media });
    }
    this.standing = 'still';
  }

  /** A page that nobody sees may lose its microphone, and its memory. */
  #hidden = (): void => {
    if (document.hidden) void this.finish('ui-voice-hidden');
  };

  #beat = (): void => {
    const run = this.#run;
    if (!run) return;
    this.ms = run.tape.ms(performance.now());
    // Who speaks does not touch.
    if (this.standing === 'recording') rest.stir();
    if (this.ms >= MOST_MS || run.bytes >= MOST_BYTES) void this.finish('ui-voice-full');
  };
}

/** What this device can record; none where it has no recorder, or one without any encoder. */
function media(): string | undefined {
  return 'MediaRecorder' in window ? MEDIA.find((type) => MediaRecorder.isTypeSupported(type)) : undefined;
}

async function stopped(recorder: MediaRecorder): Promise<void> {
  if (recorder.state === 'inactive') return;
  await new Promise<void>((done) => {
    recorder.onstop = () => done();
    recorder.stop();
  });
}

/** Seals the recording and writes the note; a second try seals nothing twice. */
async function keep({ birth, placenta, begun }: Run, sound: Blob, about: { ms: number; media: string; chapters: { item: string; at_ms: number }[] }): Promise<void> {
  let file: string | undefined;
  const again = async (): Promise<void> => {
    file ??= (await keepFile('voice', sound)).file;
    const data = { ...about, file, ...(placenta === null ? {} : { placenta }) };
    const entry = await birth.write({ request: 'record', birth: birth.id, fact: { kind: 'voice_noted', data }, at: { at: 'now', ago_ms: ago(begun) } });
    birth.offerUndo(entry, ui('ui-voice-note'));
    dictation.kept = entry;
  };
  try {
    await again();
  } catch (cause) {
    feel('failed');
    notSaved.add(ui('ui-voice-note'), asApiError(cause), again);
  }
}

export const dictation = new Dictation();
