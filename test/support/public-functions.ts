import { join } from "node:path";
import ts from "typescript";
import { readWorkspaces, repositoryRoot } from "../../scripts/read-workspaces.ts";

export interface PublicFunction {
  /** `@steelyard/core/units centimetres` */
  readonly name: string;
  /** The doc comment as it stands in the source; empty when there is none. */
  readonly comment: string;
}

/** Every function that a package under packages/ offers through its export map. */
export function readPublicFunctions(): readonly PublicFunction[] {
  const entries = readWorkspaces()
    .filter(({ folder }) => folder.startsWith("packages/"))
    .flatMap(({ folder, manifest }) =>
      Object.entries(manifest.exports ?? {}).map(([subpath, file]) => ({
        entry: join(manifest.name, subpath),
        file: join(repositoryRoot, folder, file),
      })),
    );
  const program = ts.createProgram(
    entries.map(({ file }) => file),
    {
      target: ts.ScriptTarget.ES2023,
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      allowImportingTsExtensions: true,
      noEmit: true,
      types: [],
    },
  );
  const checker = program.getTypeChecker();
  return entries.flatMap(({ entry, file }) => {
    const source = program.getSourceFile(file);
    const module = source && checker.getSymbolAtLocation(source);
    return (module ? checker.getExportsOfModule(module) : []).flatMap((exported) => {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
      const declaration = symbol.valueDeclaration;
      if (declaration === undefined) return [];
      if (checker.getTypeOfSymbol(symbol).getCallSignatures().length === 0) return [];
      return [{ name: `${entry} ${exported.name}`, comment: commentOf(declaration) }];
    });
  });
}

function commentOf(declaration: ts.Declaration): string {
  return ts
    .getJSDocCommentsAndTags(declaration)
    .filter(ts.isJSDoc)
    .map((comment) => comment.getText())
    .join("\n");
}
