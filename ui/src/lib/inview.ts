/** An attachment: what is told below the button that asked for it comes into view. */
export function inView(node: HTMLElement): void {
  node.scrollIntoView({ block: 'nearest' });
}
