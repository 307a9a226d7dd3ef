import { Notice } from '@/app/_components/notice';
import { PhoneSteps } from './phone-steps';

interface Props {
  called: string;
  fingerprint: string;
  phone: 'android' | 'iphone' | null;
}

export function TrustPart({ called, fingerprint, phone }: Props) {
  return (
    <section className="sheet grid gap-4">
      <h2>1. Trust this bank</h2>
      <p>
        Phones talk safely only with whom they know. This bank has made its own certificate, ‘{called}’. Put it on the
        phone, and the warning goes away.
      </p>
      <Notice kind="caution">
        <p>
          A phone that trusts it believes this computer at addresses inside a house or farm and at this bank’s own name,
          and nowhere else. Somebody who stole the key from this computer could pass for such an address. Do this only
          on a phone that is yours to decide about, and take it off again when you no longer help here.
        </p>
      </Notice>
      {/* A plain link: the browser must fetch the file itself. */}
      <p>
        <a href="/api/authority" className="button main" download>
          Get the certificate
        </a>
      </p>
      <div className="grid gap-1">
        <h3>Is it the right one?</h3>
        <p>
          Compare what the phone shows as SHA-256 fingerprint with this one. Read it from the computer that runs Hilum,
          on this page or where it was started: somebody between you and the bank could show you a false page on the
          phone.
        </p>
        <p className="figures grid grid-cols-4 gap-x-3 gap-y-1 justify-self-start rounded-paper bg-sunk p-3 text-lg sm:grid-cols-8">
          {fingerprint.split(' ').map((group, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two groups may be the same
            <span key={index}>{group}</span>
          ))}
        </p>
      </div>
      <PhoneSteps
        phone={phone}
        android={
          <>
            <ol className="grid list-decimal gap-2 pl-6">
              <li>
                Tap ‘Get the certificate’. If the phone says that it must be installed in Settings, that is right.
              </li>
              <li>
                Open Settings, then Security, More security settings, Encryption and credentials, Install a certificate,
                CA certificate. Menus differ: search Settings for ‘CA certificate’.
              </li>
              <li>Read the warning, choose Install anyway, unlock the phone, and pick the file from Downloads.</li>
              <li>
                Compare: in the same place open Trusted credentials, User, ‘{called}’. If the fingerprint is another
                one, remove it at once and tell the steward.
              </li>
            </ol>
            <p className="quiet">
              Use the phone’s own browser or Chrome. The phone may say now and then that the network could be monitored:
              that is because of this certificate. To take it off: the same place, ‘{called}’, Remove.
            </p>
          </>
        }
        iphone={
          <>
            <ol className="grid list-decimal gap-2 pl-6">
              <li>Open this page in Safari, tap ‘Get the certificate’, then Allow.</li>
              <li>
                Open Settings and tap Profile Downloaded at the top. Compare: More Details, ‘{called}’. If the
                fingerprint is another one, tap Remove and tell the steward.
              </li>
              <li>Tap Install, type the phone’s passcode, and Install once more.</li>
              <li>
                Open Settings, General, About, Certificate Trust Settings (at the very bottom), and switch on ‘{called}
                ’. Without this the phone goes on warning.
              </li>
            </ol>
            <p className="quiet">
              To take it off: Settings, General, VPN and Device Management, ‘{called}’, Remove Profile.
            </p>
          </>
        }
      />
    </section>
  );
}
