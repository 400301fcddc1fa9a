#include <exception>
#include <iostream>
#include <new>

#include <CLI/CLI.hpp>

#include "app/cli/program.h"
#ifdef HITHER_EDITOR
#include "app/editor/run_editor.h"
#endif

using namespace hither::cli;

namespace {

void addDisplay(CLI::App* command, Display& display) {
    command->add_flag_callback("--metric", [&display] { display = Display::metric; }, "lengths in mm, whatever the plan says");
    command->add_flag_callback("--inch", [&display] { display = Display::inch; }, "lengths in inch fractions, whatever the plan says");
}

CLI::App* addCommand(CLI::App& app, const std::string& name, const std::string& about, const std::string& example) {
    CLI::App* command = app.add_subcommand(name, about);
    command->footer("Example:\n  " + example);
    return command;
}

int run(int argc, char** argv) {
    CLI::App app{"Hither: plans for where an adaptive switch goes and what holds it there.\n"
                 "Exit code: 0 fine, 1 a check misses, 2 bad input."};
    app.name("hither");
    app.footer("With no command, or with a plan in place of one, it opens the editor.");
    app.require_subcommand(1);
    app.set_help_all_flag("--help-all", "help of every command");
    app.failure_message([](const CLI::App*, const CLI::Error& error) {
        return "hither: " + std::string(error.what()) + " (hither --help lists the commands)\n";
    });
    int code = fine;
    const std::string planHelp = "the plan: a .hither file or its JSON form";

    CheckArguments check;
    CLI::App* c = addCommand(app, "check", "findings for every option, worst first", "hither check robin.hither --brief");
    c->add_option("PLAN", check.plan, planHelp)->required();
    c->add_option("--option", check.option, "only this option, by id or name");
    c->add_flag("--brief", check.brief, "leave out what is met");
    c->add_flag("--json", check.json, "for machines");
    addDisplay(c, check.display);
    c->callback([&] { code = runCheck(check, std::cout, std::cerr); });

    PartsArguments parts;
    c = addCommand(app, "parts", "parts list with prices, totals and tools", "hither parts robin.hither --csv > robin.csv");
    c->add_option("PLAN", parts.plan, planHelp)->required();
    c->add_option("--option", parts.option, "only this option, by id or name");
    CLI::Option* csv = c->add_flag("--csv", parts.csv, "for a spreadsheet");
    c->add_flag("--json", parts.json, "for machines")->excludes(csv);
    c->callback([&] { code = runParts(parts, std::cout, std::cerr); });

    SolveArguments solve;
    c = addCommand(app, "solve", "joint settings that bring each switch to its site", "hither solve robin.hither --write");
    c->add_option("PLAN", solve.plan, planHelp)->required();
    c->add_option("--option", solve.option, "only this option, by id or name");
    c->add_option("--mount", solve.mount, "only this mount, by id or name");
    c->add_option("--way", solve.choose, "which of the ways found to show and write")->check(CLI::Range(1, 1000));
    c->add_flag("--write", solve.write, "save the settings into the plan");
    c->add_flag("--json", solve.json, "for machines");
    addDisplay(c, solve.display);
    c->callback([&] { code = runSolve(solve, std::cout, std::cerr); });

    ImportArguments import;
    c = addCommand(app, "import", "makes a plan from its JSON form", "hither import robin.json -o robin.hither");
    c->add_option("X.json", import.from, "the JSON form (resources/plan_format.md)")->required();
    c->add_option("-o,--output", import.to, "the plan to write")->required();
    c->add_flag("--replace", import.overwrite, "replace the plan when it is already there");
    c->callback([&] { code = runImport(import, std::cout, std::cerr); });

    ExportArguments exportTo;
    c = addCommand(app, "export", "writes a plan as JSON", "hither export robin.hither -o robin.json");
    c->add_option("PLAN", exportTo.plan, planHelp)->required();
    c->add_option("-o,--output", exportTo.to, "the file to write; standard output when left out");
    c->add_flag("--replace", exportTo.overwrite, "replace the file when it is already there");
    c->callback([&] { code = runExport(exportTo, std::cout, std::cerr); });

    ResolveArguments resolve;
    c = addCommand(app, "resolve", "every part's pose, joint value and solid, for other tools", "hither resolve robin.hither --json");
    c->add_option("PLAN", resolve.plan, planHelp)->required();
    c->add_option("--option", resolve.option, "only this option, by id or name");
    c->add_flag("--json", resolve.json, "everything, for machines; without it, a table of poses");
    addDisplay(c, resolve.display);
    c->callback([&] { code = runResolve(resolve, std::cout, std::cerr); });

    ListArguments list;
    c = addCommand(app, "list", "what there is to plan with", "hither list parts gooseneck 300");
    c->add_option("WHAT", list.what, "parts, supports or sites")->required()->check(CLI::IsMember({"parts", "supports", "sites"}));
    std::vector<std::string> words;
    c->add_option("WORDS", words, "only parts with all of these words");
    c->add_flag("--json", list.json, "for machines");
    c->callback([&] {
        for (const std::string& w : words) list.words += (list.words.empty() ? "" : " ") + w;
        code = runList(list, std::cout, std::cerr);
    });

#ifdef HITHER_EDITOR
    // No command: the editor, on a plan when one is named.
    if (argc == 1) return hither::runEditor(argc, argv, {});
    if (argc == 2 && argv[1][0] != '-' && std::filesystem::exists(argv[1]) &&
        app.get_subcommands([&](const CLI::App* command) { return command->check_name(argv[1]); }).empty())
        return hither::runEditor(argc, argv, argv[1]);
#endif

    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp& e) { return app.exit(e);
    } catch (const CLI::CallForAllHelp& e) { return app.exit(e);
    } catch (const CLI::ParseError& e) { app.exit(e); return badInput; }
    std::cout.flush();
    if (!std::cout) { std::cerr << "hither: standard output could not be written\n"; return badInput; }
    return code;
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    try {
        return run(argc, argv);
    } catch (const Refused& refused) {
        std::cout.flush();
        std::cerr << "hither: " << refused.line << "\n";
    } catch (const std::bad_alloc&) {
        std::cerr << "hither: there is not enough memory for this\n";
    } catch (const std::exception& error) {
        std::cerr << "hither: " << error.what() << "\n";
    }
    return badInput;
}
