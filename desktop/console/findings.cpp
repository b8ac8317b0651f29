// What looks wrong though nothing conflicts.
#include "console/commands.hpp"
#include "office/station_findings.hpp"

#include "core/journal/json_out.hpp"
#include "core/journal/json_value.hpp"
#include "store/read_catalogue.hpp"
#include "sync/server/office.hpp"
#include "sync/server/serving.hpp"
#include "sync/server/summary_words.hpp"

namespace bullace::console {

using journal::JsonList;
using journal::JsonObject;
using server::tellFailure;

namespace {

std::string findingJson(const merge::Finding& finding) {
    JsonObject object;
    object.text("finding", merge::findingWord(finding.kind));
    JsonList subjects;
    for (const std::string& subject : finding.subjects) {
        subjects.text(subject);
    }
    object.raw("subjects", subjects.done());
    if (!finding.value.empty()) {
        object.raw("value", journal::valueToJson(finding.value));
    }
    if (finding.run) {
        JsonList evidence;
        for (const double number : finding.run->evidence) {
            evidence.raw(journal::valueToJson(journal::floatValue(number)));
        }
        object.number("along", finding.run->along).raw("evidence", evidence.done());
    }
    if (!finding.device.empty()) {
        object.text("origin", finding.device).number("off", finding.off);
    }
    JsonList repairs;
    for (const merge::Repair& repair : finding.repair) {
        repairs.raw(JsonObject()
                        .text("subject", repair.subject)
                        .raw("value", journal::valueToJson(repair.value))
                        .done());
    }
    return object.text("words", merge::findingWords(finding)).raw("repair", repairs.done()).done();
}

} // namespace

int showFindings(const std::string& path, Terminal& terminal) {
    const auto database = store::Database::open(path, false, store::fileSurroundings());
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    const auto catalogue = store::readCatalogue(**database);
    if (!catalogue) {
        return tellFailure(terminal.err, catalogue.error());
    }
    const journal::Wall now = server::wallNow();
    const auto today =
        std::chrono::floor<std::chrono::days>(std::chrono::sys_time<std::chrono::milliseconds>(
            std::chrono::milliseconds(now.ms + now.minutes * 60'000)));
    const auto found = office::stationFindings(**database, **catalogue, today, {});
    if (!found) {
        return tellFailure(terminal.err, found.error());
    }
    for (const merge::Finding& finding : *found) {
        terminal.out << (terminal.wantsJson ? findingJson(finding) : merge::findingWords(finding))
                     << "\n";
    }
    if (!terminal.wantsJson) {
        terminal.out << (found->empty() ? std::string("Nothing looks wrong.")
                                        : server::counted(found->size(), "finding", "findings") +
                                              "; a person settles each at the desk.")
                     << "\n";
    }
    return 0;
}

} // namespace bullace::console
