import { PhoneSteps } from './phone-steps';

interface Props {
  number: 1 | 2;
  /** where the phone finds the bank; unknown while the computer is in no network */
  address: string | undefined;
  phone: 'android' | 'iphone' | null;
}

export function InstallPart({ number, address, phone }: Props) {
  return (
    <section className="sheet grid gap-4">
      <h2>{number}. Put the bench on the home screen</h2>
      <p>
        On the phone open the bench and sign in. If the browser {number === 2 ? 'still warns' : 'warns'}, stop:{' '}
        {number === 2 ? 'something in step 1 is missing.' : 'ask the steward.'}
      </p>
      <p className="grid gap-1">
        <a href="/bench" className="button main justify-self-start">
          Open the bench
        </a>
        {address && <span className="figures quiet wrap-anywhere text-sm">{address}/bench</span>}
      </p>
      <PhoneSteps
        phone={phone}
        android={
          <p>
            Tap the three dots at the top, then Install app (or Add to Home screen, Install). From now on open Hilum by
            its seed on the home screen.
          </p>
        }
        iphone={
          <p>
            In Safari tap Share (the square with the arrow), then Add to Home Screen, then Add. From now on open Hilum
            by its seed on the home screen. It asks you to sign in once more there.
          </p>
        }
      />
      <p className="quiet">Phones that are lost: a steward ends their sign-in under Settings, People.</p>
    </section>
  );
}
