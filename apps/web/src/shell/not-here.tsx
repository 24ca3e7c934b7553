import { Link } from 'wouter';

export function NotHere({ sentence }: { readonly sentence: string }) {
  return (
    <main id="main" tabIndex={-1} className="page narrow">
      <h1>Not here</h1>
      <p className="lead">{sentence}</p>
      <p className="callout-actions">
        <Link href="/" className="button button-main">
          All patients
        </Link>
      </p>
    </main>
  );
}
