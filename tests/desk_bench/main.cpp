// bullace-desk-bench: what the desk's pages cost at a million entries and twelve thousand
// positions, through the real window, drawn without a graphics card. A plain table, each figure
// beside its target. What makes the station and what plays the tablet are processes of their own:
// the memory is the desk's.
#include "bench/measure.hpp"
#include "bench/served.hpp"
#include "pages.hpp"
#include "station.hpp"
#include "table.hpp"

#include <QApplication>
#include <QProcess>

#include <cstdio>
#include <filesystem>
#include <fstream>

using namespace bullace;
using namespace bullace::desk_bench;

namespace {

constexpr double kMostMemory = 400; // MiB

int usage() {
    std::fprintf(
        stderr,
        "bullace-desk-bench [STATION [PART]]\n"
        "  STATION is the benchmark's station database: made there where it is not yet,\n"
        "  and copied before anything is measured. Without it one is made and thrown "
        "away.\n"
        "  PART is one of open, vines, map, rulebook, search, studies, conflicts, push; else "
        "all.\n");
    return 2;
}

void makeWith(const std::string& self, const char* what, const std::string& path) {
    const int code = QProcess::execute(QString::fromStdString(self),
                                       {QString::fromLatin1(what), QString::fromStdString(path)});
    bench::must(code == 0, std::string(what) + " " + path);
}

std::string load() {
    std::string text;
    std::getline(std::ifstream("/proc/loadavg"), text);
    return text;
}

int measure(const std::string& self, const std::string& given, const std::string& part) {
    const bench::Folder folder;
    const std::string path = folder.file("station.db");
    const std::string source = given.empty() ? path : given;
    if (!std::filesystem::exists(source)) {
        makeWith(self, "--station", source);
    }
    if (source != path) {
        std::filesystem::copy_file(source, path);
    }
    makeWith(self, "--tablet-past", folder.file("tablet.db"));
    const std::string empty = folder.file("empty.db");
    bench::makeStation(empty).reset();
    std::printf("load before: %s\n", load().c_str());
    printHead();
    const auto isWanted = [&part](const char* name) { return part.empty() || part == name; };
    BenchClock clock;
    if (isWanted("open")) {
        measureOpening(path, empty, clock);
    }
    {
        DeskScreen screen(path, clock);
        screen.rest();
        const std::pair<const char*, void (*)(DeskScreen&)> pages[] = {
            {"vines", measureVines},
            {"map", measureMap},
            {"rulebook", measureRulebook},
            {"search", measureSearch},
            {"studies", measureStudies}};
        for (const auto& [name, page] : pages) {
            isWanted(name) ? page(screen) : void();
        }
        if (isWanted("conflicts")) {
            measureConflicts(screen, folder.file("bare.db"));
        }
        if (isWanted("push")) {
            measurePush(screen, folder.file("tablet.db"), self);
        }
        print({"memory of the desk, the most after all of it",
               {bench::memoryMiB(bench::kThisProcess, "VmHWM")},
               "MiB",
               kMostMemory,
               {},
               ""});
    }
    std::printf("load after: %s\n", load().c_str());
    return 0;
}

} // namespace

int main(int count, char** words) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    qputenv("QT_SCALE_FACTOR", "1");
    const std::vector<std::string> given(words + 1, words + count);
    if (given.size() == 2 && given[0] == "--station") {
        makeStation(given[1]);
        return 0;
    }
    if (given.size() == 2 && given[0] == "--tablet-past") {
        makeTablet(given[1]);
        return 0;
    }
    if (given.size() == 4 && given[0] == "--tablet") {
        return pushFrom(given[1], given[2], given[3]);
    }
    if (given.size() > 2 || (!given.empty() && given[0].starts_with("-"))) {
        return usage();
    }
    const QApplication program(count, words);
    return measure(words[0],
                   given.empty() ? std::string{} : given[0],
                   given.size() < 2 ? std::string{} : given[1]);
}
