package coldproof.face.cli;

import java.util.List;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** {@code pages completion|manual}: what a shell and a reader of manuals want, made from the descriptions of the verbs. */
final class PagesVerb implements Verb {
    private static final List<String> PAGES = List.of("completion", "manual");

    @Override
    public void describe(CommandSpec spec) {
        Options.arguments(spec, "completion|manual", "1", "completion: a script for bash and zsh; manual: a page for man.");
    }

    @Override
    public int run(Invocation call) {
        String page = call.arguments().get(0);
        if (!PAGES.contains(page)) {
            throw Invocation.wrongWord("coldproof pages", page, PAGES);
        }
        call.streams().out().print(page.equals("manual") ? ManualPage.of(CommandLineFace.version()) : completion());
        return ExitStatus.DONE;
    }

    private static String completion() {
        CommandSpec all = CommandSpec.create().name("coldproof");
        for (VerbEntry entry : Verbs.all()) {
            all.addSubcommand(entry.name(), CommandLineFace.spec(entry, entry.verb()));
        }
        return AutoComplete.bash("coldproof", new CommandLine(all));
    }
}
