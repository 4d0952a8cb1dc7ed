import { hashOf, type Route } from '../../state/route.ts';

/** The line over a page that leads back to where it belongs. */
export function BackLink({ to, says }: { to: Route; says: string }) {
  return (
    <p class="small">
      <a class="link-line" href={hashOf(to)}>
        {says}
      </a>
    </p>
  );
}
