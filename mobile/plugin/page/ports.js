// What stands as `window.secundine` before the page loads, on a phone: each port of the page (ui/src/lib/ports.ts) over the
// plugin's commands. What fails is left undone and nobody is told: the screen shows the same thing too.
(() => {
  'use strict';
  const ask = (command, args = {}) => window.__TAURI_INTERNALS__.invoke(`plugin:phone|${command}`, args);
  const quietly = (command, args) => void Promise.resolve().then(() => ask(command, args)).catch(() => {});

  /** On while anybody wants it; gives back what ends one wish. */
  const wished = (command) => {
    let wishes = 0;
    const count = (by) => {
      const before = wishes > 0;
      wishes += by;
      if (wishes > 0 !== before) quietly(command, { on: wishes > 0 });
    };
    return () => {
      let over = false;
      count(1);
      return () => {
        if (!over) count(-1);
        over = true;
      };
    };
  };

  // --- what the device tells of itself

  let metered = null;
  const tell = async (first) => {
    const { metered: line, ...told } = await ask('tell', { ask: first });
    metered = line ?? null;
    return told;
  };
  const look = () => void Promise.resolve().then(() => tell(false)).catch(() => {});
  document.addEventListener('visibilitychange', () => document.hidden || look());
  window.addEventListener('online', look);
  look();

  // --- the voice

  const tongue = () => document.documentElement.lang || navigator.language;
  const watchers = new Set();
  let voice = { tongue: '', here: false };
  const listen = async () => {
    const wanted = tongue();
    voice = { tongue: wanted, here: voice.tongue === wanted && voice.here };
    try {
      const { available } = await ask('voices', { language: wanted });
      if (tongue() !== wanted) return;
      const changed = voice.here !== available;
      voice = { tongue: wanted, here: available };
      if (changed) for (const told of watchers) told();
    } catch {
      // None then.
    }
  };
  window.addEventListener('secundine-speech', ({ detail }) => detail?.call === 'ready' && void listen());

  const bytes = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));

  window.secundine = {
    buzzer: { buzz: (pattern) => quietly('buzz', { pattern: [...pattern] }) },
    device: {
      tell: () => tell(true),
      keepAwake: wished('keep_awake'),
      // No light sensor is asked: the clock decides.
      watchLight: () => () => {},
      metered: () => metered,
    },
    speaker: {
      available: () => {
        if (voice.tongue !== tongue()) void listen();
        return voice.here;
      },
      watch: (changed) => {
        watchers.add(changed);
        return () => watchers.delete(changed);
      },
      say: (text) => quietly('speak', { text, language: tongue() }),
      stop: () => quietly('hush'),
    },
    sharer: { share: async (path) => (await ask('share', { path })).given === true },
    alarms: { arm: (birth, coming, words, patterns) => quietly('remind', { group: birth, coming, words, patterns }) },
    lockScreen: {
      run: (sinceMs, words) => quietly('clock', { sinceMs, words }),
      stop: (words) => quietly('clock', { sinceMs: null, words }),
    },
    volumeKeys: { take: wished('volume_keys') },
    camera: {
      photograph: async () => {
        const { base64 } = await ask('photograph');
        return base64 ? new Blob([bytes(base64)], { type: 'image/jpeg' }) : null;
      },
    },
  };
})();
