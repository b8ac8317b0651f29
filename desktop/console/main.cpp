// The console program: reads the words of a command and runs it.
#include "console/commands.hpp"
#include "console/work.hpp"

#include "sync/protocol/limits.hpp"
#include "sync/server/serving.hpp"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <iostream>
#include <unistd.h>

using namespace bullace::console;

namespace {

// Each adds one command to the program; the chosen one puts what is to be done into `work`.
void addCreate(CLI::App& app, Work& work) {
    auto options = std::make_shared<CreateOptions>();
    CLI::App* command =
        app.add_subcommand("create", "Make a station's database, or a device's journal");
    command->add_option("DB", options->path, "The file to make")->required();
    command->add_option("--station", options->station, "Name of the station");
    command->add_option("--zone", options->zone, "Its time zone, like Area/City");
    command->add_flag("--field", options->isField, "Make the journal of a field device instead");
    command->add_option(
        "--device", options->device, "The device's 16 hex digits, where they are known already");
    command->callback([options, &work] {
        if (!options->isField && (options->station.empty() || options->zone.empty())) {
            throw CLI::ValidationError("A station needs --station NAME and --zone ZONE");
        }
        work = [options](Terminal& terminal) { return create(*options, terminal); };
    });
}

void addExchange(CLI::App& app, Work& work) {
    auto path = std::make_shared<std::string>();
    auto files = std::make_shared<std::vector<std::string>>();
    CLI::App* import = app.add_subcommand(
        "import", "Take in entries from JSON Lines, in any order, as often as you like");
    import->add_option("DB", *path, "The database or journal")->required();
    import->add_option("FILE", *files, "Files of JSON Lines; - is standard input")->required();
    import->callback([path, files, &work] {
        work = [path, files](Terminal& terminal) { return importFiles(*path, *files, terminal);
};
} // namespace
);
CLI::App* out = app.add_subcommand("export", "Write all entries as JSON Lines");
out->add_option("DB", *path, "The database or journal")->required();
out->callback([path, &work] {
    work = [path](Terminal& terminal) { return exportEntries(*path, terminal); };
});
auto target = std::make_shared<std::string>();
CLI::App* backup = app.add_subcommand("backup", "Write a checked copy, also while a server runs");
backup->add_option("DB", *path, "The database or journal")->required();
backup->add_option("TARGET", *target, "The file to write; it must not be there yet")->required();
backup->callback([path, target, &work] {
    work = [path, target](Terminal& terminal) { return backUp(*path, *target, terminal); };
});
}

void addLooking(CLI::App& app, Work& work) {
    auto path = std::make_shared<std::string>();
    auto under = std::make_shared<std::string>();
    CLI::App* state =
        app.add_subcommand("state", "What is settled and what is open, one JSON line a subject");
    state->add_option("DB", *path, "The database or journal")->required();
    state->add_option(
        "--under", *under, "Only this subject, or those below this path, like obs/B2-07-14");
    state->callback([path, under, &work] {
        work = [path, under](Terminal& terminal) { return showState(*path, *under, terminal); };
    });
    CLI::App* conflicts =
        app.add_subcommand("conflicts", "Which values disagree and wait for a person");
    conflicts->add_option("DB", *path, "The database or journal")->required();
    conflicts->add_option("--under", *under, "Only this subject, or those below this path");
    conflicts->callback([path, under, &work] {
        work = [path, under](Terminal& terminal) { return showConflicts(*path, *under, terminal); };
    });
    CLI::App* findings =
        app.add_subcommand("findings", "What looks wrong though nothing disagrees");
    findings->add_option("DB", *path, "The database or journal")->required();
    findings->callback([path, &work] {
        work = [path](Terminal& terminal) { return showFindings(*path, terminal); };
    });
    auto mend = std::make_shared<bool>(false);
    CLI::App* check =
        app.add_subcommand("verify", "Check every entry, and the state against the entries");
    check->add_option("DB", *path, "The database or journal")->required();
    check->add_flag("--mend", *mend, "First make the state anew from the entries");
    check->callback([path, mend, &work] {
        work = [path, mend](Terminal& terminal) { return verify(*path, *mend, terminal); };
    });
}

// Options of an office command, as it gets them.
struct OfficeWords {
    std::string path;
    bullace::server::OfficeRequest request;
    std::string subject;
    std::string value;
    std::string why;
    std::string by;
    std::string revoke;
    std::string takeIn;
    bool isOffice = false;
};

void addOffice(CLI::App& app, Work& work) {
    auto words = std::make_shared<OfficeWords>();
    const auto ask = [words, &work](const std::string& verb) {
        words->request.verb = verb;
        words->request.options = {{"subject", words->subject},
                                  {"value", words->value},
                                  {"why", words->why},
                                  {"by", words->by},
                                  {"revoke", words->revoke},
                                  {"take-in", words->takeIn},
                                  {"letter", words->isOffice ? "s" : "t"}};
        work = [words](Terminal& terminal) {
            words->request.wantsJson = terminal.wantsJson;
            return askOffice(words->path, words->request, terminal.in, terminal);
        };
    };
    CLI::App* rule =
        app.add_subcommand("rule", "Settle a conflict: one value, with the reason and who decided");
    rule->add_option("DB", words->path, "The station's database")->required();
    rule->add_option("SUBJECT",
                     words->subject,
                     "As `bullace conflicts` shows it, like obs/B2-07-14/2026-05-12/stage")
        ->required();
    rule->add_option(
            "--value", words->value, "The value, as JSON: 65, 12.5, \"black\", null for none")
        ->required();
    rule->add_option("--why", words->why, "The reason")->required();
    rule->add_option("--by", words->by, "The short code of the person who decides")->required();
    rule->callback([ask] { ask("rule"); });
    CLI::App* devices = app.add_subcommand(
        "devices", "Which devices are paired; revoke one; take in what waits apart");
    devices->add_option("DB", words->path, "The station's database")->required();
    devices->add_option("--revoke",
                        words->revoke,
                        "Turn this device (name, or letter and digits) away from now on");
    devices->add_option(
        "--take-in", words->takeIn, "Take in the office entries laid apart under this number");
    devices->callback([ask] { ask("devices"); });
    CLI::App* arm = app.add_subcommand("arm", "Open pairing for five minutes, for one device");
    arm->add_option("DB", words->path, "The station's database, while a server runs on it")
        ->required();
    arm->add_flag("--office", words->isOffice, "The device gets an office's rights");
    arm->callback([ask] { ask("arm"); });
}

void addNetwork(CLI::App& app, Work& work) {
    auto served =
        std::make_shared<ServeOptions>(ServeOptions{"", "::", bullace::sync::kDefaultPort});
    CLI::App* serving =
        app.add_subcommand("serve", "Let paired devices sync with the station's database");
    serving->add_option("DB", served->path, "The station's database")->required();
    serving->add_option(
        "--address", served->host, "The address to listen at; all of this computer's if not given");
    serving->add_option("--port", served->port, "The port; 0 takes any that is free")
        ->capture_default_str();
    serving->callback([served, &work] {
        work = [served](Terminal& terminal) { return serve(*served, terminal); };
    });
    auto paired = std::make_shared<PairOptions>(PairOptions{"", "", "", "tablet", false});
    CLI::App* pairing = app.add_subcommand("pair", "Pair this device with a station that is armed");
    pairing->add_option("JOURNAL", paired->path, "The device's journal; made where it is not there")
        ->required();
    pairing->add_option(
        "--at", paired->at, "HOST:PORT of the station; not needed with the text of a QR code");
    pairing
        ->add_option(
            "--code", paired->code, "The code that the office shows, or the text of its QR code")
        ->required();
    pairing->add_option("--name", paired->name, "What the office calls this device")
        ->capture_default_str();
    pairing->add_flag("--office", paired->isOffice, "Ask for an office's rights");
    pairing->callback([paired, &work] {
        work = [paired](Terminal& terminal) { return pair(*paired, terminal); };
    });
    auto synced = std::make_shared<SyncOptions>();
    CLI::App* syncing = app.add_subcommand("sync", "Exchange what is new with the station");
    syncing->add_option("JOURNAL", synced->path, "The device's journal")->required();
    syncing->add_option("--at", synced->at, "HOST:PORT, where the station has moved");
    syncing->add_option(
        "--break-after",
        synced->stopAfter,
        "Break the line off once this many entries went, to see the next sync go on");
    syncing->callback([synced, &work] {
        work = [synced](Terminal& terminal) { return syncOnce(*synced, terminal); };
    });
}

// What is wrong with the words of a call. The parser asks for a command where it was given one that
// it does not know.
std::string whatIsWrong(const CLI::App& parsed, const CLI::Error& error) {
    if (!parsed.get_subcommands().empty()) {
        return error.what();
    }
    const std::vector<std::string> unknown = parsed.remaining();
    return unknown.empty() ? "A command is required"
                           : "There is no command \"" + unknown.front() + "\"";
}

int runCommand(int count, char** words) {
    CLI::App app("Bullace without a screen: a vine-by-vine record, merged at the station.",
                 "bullace");
    app.require_subcommand(1);
    app.fallthrough();
    app.failure_message([](const CLI::App* parsed, const CLI::Error& error) {
        return "bullace: " + whatIsWrong(*parsed, error) +
               ". `bullace --help` lists the commands.\n";
    });
    Terminal terminal{std::cin, std::cout, std::cerr, false, ::isatty(STDERR_FILENO) == 1};
    app.add_flag(
        "--json", terminal.wantsJson, "Print for programs: one JSON document, or JSON Lines");
    Work work;
    addCreate(app, work);
    addExchange(app, work);
    addLooking(app, work);
    addOffice(app, work);
    addNetwork(app, work);
    addWork(app, work);
    if (count < 2) {
        std::cout << app.help();
        return 2;
    }
    try {
        app.parse(count, words);
    } catch (const CLI::ParseError& error) {
        return app.exit(error, std::cout, std::cerr) == 0 ? 0 : 2;
    }
    const int status = work(terminal);
    terminal.out.flush();
    if (!terminal.out) {
        terminal.err << "bullace: The output could not be written whole.\n";
        return 1;
    }
    return status;
}

} // namespace

int main(int count, char** words) {
    std::ios::sync_with_stdio(false);
    try {
        return runCommand(count, words);
    } catch (const std::exception& error) {
        std::fprintf(stderr,
                     "bullace: Something went wrong that should not: %s. What was reported as "
                     "saved is saved.\n",
                     error.what());
        return 1;
    }
}
