import { useErrorBoundary } from "preact/hooks";
import { Broken } from "./Broken.tsx";
import { LeatherPane } from "./leather/LeatherPane.tsx";
import { OrderPane } from "./order/OrderPane.tsx";
import { PrintPane } from "./print/PrintPane.tsx";
import { BenchHead } from "./start/BenchHead.tsx";
import { StartPage } from "./start/StartPage.tsx";
import { notice, order, view } from "./state.ts";

/** The order on the left, the leather on the right where it stays in view, the printing under both. */
function Bench() {
  return (
    <main class="bench">
      <section class="bench-order" id="order" tabIndex={-1} aria-label="The order">
        <OrderPane />
      </section>
      <section class="bench-leather" id="leather" tabIndex={-1} aria-label="The leather">
        <LeatherPane />
      </section>
      <div class="bench-print">
        <PrintPane />
      </div>
    </main>
  );
}

function SkipLinks() {
  return (
    <nav class="skip" aria-label="Skip">
      <a href="#order">To the order</a>
      <a href="#leather">To the leather</a>
    </nav>
  );
}

/** Said aloud by a screen reader; it is there from the start, for only a change in it is heard. */
function Notice() {
  return (
    <div class="notice" role="status" aria-live="polite">
      {notice.value}
    </div>
  );
}

const titleOf = (): string => {
  const open = order.value;
  if (!open) return "Whittaw";
  const whom = view.value?.forWhom ?? "";
  return `${whom === "" ? open.file : whom} – Whittaw`;
};

export function App() {
  const [fault] = useErrorBoundary();
  if (fault !== undefined) return <Broken fault={fault} />;
  const open = order.value !== undefined;
  document.title = titleOf();
  return (
    <>
      {open ? <SkipLinks /> : null}
      {open ? <BenchHead /> : null}
      {open ? (
        <Bench />
      ) : (
        <main class="start">
          <StartPage />
        </main>
      )}
      <Notice />
    </>
  );
}
