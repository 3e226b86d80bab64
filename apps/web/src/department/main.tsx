import { render } from "preact";
import { Spoken } from "../components/language/spoken.tsx";
import { DepartmentApp } from "./department-app.tsx";
import { departmentLanguage } from "./effects/department-language.ts";
import { pageEffects } from "./effects/page-effects.ts";
import "./styles/index.css";

const place = document.getElementById("app");
if (place === null) throw new Error("the page has no #app");

render(<Spoken effects={departmentLanguage}>{() => <DepartmentApp effects={pageEffects} />}</Spoken>, place);
