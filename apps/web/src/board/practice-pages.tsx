/** What the practice keeps for all its patients, each on its page. */
import { Link } from 'wouter';

const PAGES = [
  ['/stock', 'Stock'],
  ['/formulary', 'Formulary'],
  ['/register', 'Controlled drugs'],
  ['/numbers', 'About these numbers'],
] as const;

export function PracticePages() {
  return (
    <nav aria-label="Of the practice" className="practice-pages">
      {PAGES.map(([href, name]) => (
        <Link key={href} href={href} className="signer">
          {name}
        </Link>
      ))}
    </nav>
  );
}
