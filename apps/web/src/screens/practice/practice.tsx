import type { VNode } from "preact";
import { useState } from "preact/hooks";
import type { ScreenProps } from "../../frame/screen-props.ts";
import { practice } from "../../messages/practice.ts";
import { practiceChildren } from "../../state/practice-children.ts";
import { type PracticeResult, practiceResult } from "../../state/practice-result.ts";
import { Feedback } from "./feedback.tsx";
import { PracticeTask } from "./practice-task.tsx";
import { Summary } from "./summary.tsx";
import "./practice.css";

/** Reading a tape on invented children. Nothing of it leaves this screen. */
export function Screen(_: ScreenProps): VNode {
  const [index, setIndex] = useState<number | undefined>(undefined);
  const [results, setResults] = useState<readonly PracticeResult[]>([]);
  const begin = (): void => {
    setResults([]);
    setIndex(0);
  };
  const child = index === undefined ? undefined : practiceChildren[index];
  const result = index === undefined ? undefined : results[index];
  return (
    <div class="practice">
      <p class="practice__mark">{practice.mark}</p>
      {index === undefined && (
        <>
          <p>{practice.intro}</p>
          <button class="button practice__main" type="button" onClick={begin}>
            {practice.start}
          </button>
        </>
      )}
      {index !== undefined && child !== undefined && (
        <PracticeTask
          key={index}
          child={child}
          number={index + 1}
          of={practiceChildren.length}
          isDone={result !== undefined}
          onRead={(reading, seconds) => setResults([...results, practiceResult(child, reading, seconds)])}
        />
      )}
      {result !== undefined && index !== undefined && (
        <Feedback
          result={result}
          isLast={index + 1 === practiceChildren.length}
          onNext={() => setIndex(index + 1)}
        />
      )}
      {index !== undefined && child === undefined && <Summary results={results} onAgain={begin} />}
    </div>
  );
}
