/** How this device looks and sounds. Nothing of a client is kept here. */
export type Theme = 'day' | 'night' | 'red';

const KEY = 'secundine-settings';

interface Kept {
  theme: Theme;
  sound: boolean;
  vibration: boolean;
}

class Settings {
  theme = $state<Theme>('day');
  sound = $state(true);
  vibration = $state(true);

  constructor() {
    const kept = read();
    const dark = typeof matchMedia === 'function' && matchMedia('(prefers-color-scheme: dark)').matches;
    this.theme = kept.theme ?? (dark ? 'night' : 'day');
    this.sound = kept.sound ?? true;
    this.vibration = kept.vibration ?? true;
  }

  /** Shows the theme and keeps the choices. */
  apply(): void {
    document.documentElement.dataset['theme'] = this.theme;
    const kept: Kept = { theme: this.theme, sound: this.sound, vibration: this.vibration };
    try {
      localStorage.setItem(KEY, JSON.stringify(kept));
    } catch {
      // A full or forbidden storage only means that the choice is asked again next time.
    }
  }
}

function read(): Partial<Kept> {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Kept>;
  } catch {
    return {};
  }
}

export const settings = new Settings();
