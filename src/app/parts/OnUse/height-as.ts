import type { Ref } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/**
 * Tells the stylesheet how high a part is that stays in place over the page, so that the page can be scrolled free of it.
 *
 * @param name custom property of the page, set in px: 0 while the part lies in the flow of the page, and taken away with it
 * @returns to be given to the part's element
 */
export function useHeightAs(name: `--${string}`): Ref<HTMLDivElement> {
  const part = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const { style } = document.documentElement;
    const element = part.current!;
    const observer = new ResizeObserver(() => {
      const height = getComputedStyle(element).position === 'fixed' ? element.offsetHeight : 0;
      style.setProperty(name, `${height}px`);
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
      style.removeProperty(name);
    };
  }, [name]);
  return part;
}
