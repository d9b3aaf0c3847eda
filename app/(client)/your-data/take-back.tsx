/** As easy as giving it; what follows is said first. A plain form, in a fold that needs no scripts. */
export function TakeBack({ coach }: { coach: string }) {
  return (
    <details className="rights-fold">
      <summary>Take my consent back</summary>
      <p>
        From then on no checks run and no check-in is taken; {coach} sees that you took it back. What is kept
        stays until you ask for it to be deleted or the years are over. You can give it again at any time.
      </p>
      <form action="/api/consent/withdraw" method="post">
        <button type="submit" className="act">
          Take it back now
        </button>
      </form>
    </details>
  );
}
