#include "sync/server/office.hpp"

#include "core/base/civil_date.hpp"
#include "core/descriptors/catalog.hpp"
#include "core/journal/json_out.hpp"
#include "core/journal/standing.hpp"
#include "core/journal/subject.hpp"
#include "store/json_reader.hpp"
#include "store/peers.hpp"
#include "store/rulings.hpp"
#include "sync/server/summary_words.hpp"

#include <algorithm>
#include <cstdlib>

namespace bullace::server {

using journal::JsonList;
using journal::JsonObject;
using store::Draft;

namespace {

std::string linesAs(const std::vector<store::ImportedLine>& lines) {
    JsonList list;
    for (const store::ImportedLine& line : lines) {
        list.raw(JsonObject()
                     .text("file", line.file)
                     .count("line", line.line)
                     .text("message", line.message)
                     .done());
    }
    return list.done();
}

void tellLines(std::ostream& err, const std::vector<store::ImportedLine>& lines) {
    for (const store::ImportedLine& line : lines) {
        err << line.file << ", line " << line.line << ": " << line.message << "\n";
    }
}

void tellKept(std::ostream& out, const store::ImportReport& report) {
    const std::uint64_t odd = report.uncounted + report.unknownSubjects +
                              report.unknownDescriptors + report.unknownFields;
    if (odd == 0) {
        return;
    }
    out << "Kept as they are: " << report.uncounted << " that do not count, "
        << report.unknownDescriptors << " with a descriptor nobody knows, "
        << report.unknownSubjects << " with a subject of no known form, " << report.unknownFields
        << " with further fields.\n";
}

// A value that can be ruled: what the descriptor allows, or nothing (a retraction).
Status checkRuledValue(const std::string& subject, BytesView value) {
    const journal::Subject parts = journal::readSubject(subject);
    const descriptors::Descriptor* descriptor = parts.form == journal::SubjectForm::Observation
                                                    ? descriptors::findBuiltIn(parts.descriptor)
                                                    : nullptr;
    return descriptor == nullptr || journal::isNullValue(value)
               ? Status{}
               : descriptors::checkValue(*descriptor, value);
}

std::string instant(std::int64_t ms, const journal::Wall& now) {
    return writeInstant(ms, now.minutes).substr(0, 16).replace(10, 1, " ");
}

std::string deviceJson(const store::DeviceRow& device) {
    JsonObject object;
    object.text("device", journal::deviceText(device.letter, device.device))
        .text("name", device.name)
        .text("key", device.keyHash)
        .number("paired_ms", device.pairedAtMs);
    if (device.lastSyncMs) {
        object.number("last_sync_ms", *device.lastSyncMs);
    }
    if (device.clockAheadMs) {
        object.number("clock_ahead_ms", *device.clockAheadMs);
    }
    if (device.revokedAtMs) {
        object.number("revoked_ms", *device.revokedAtMs);
    }
    return object.done();
}

std::string clockWords(std::int64_t aheadMs) {
    const std::int64_t seconds = std::abs(aheadMs / 1000);
    if (seconds < 60) {
        return {};
    }
    const char* way = aheadMs > 0 ? " ahead" : " behind";
    if (seconds < 7200) {
        return ", its clock " + std::to_string(seconds / 60) + " minutes" + way;
    }
    return seconds < 172'800 ? ", its clock " + std::to_string(seconds / 3600) + " hours" + way
                             : ", its clock " + std::to_string(seconds / 86'400) + " days" + way;
}

} // namespace

int tellFailure(std::ostream& err, const Error& error) {
    err << "bullace: " << error.message << "\n";
    return 1;
}

std::string OfficeRequest::option(const std::string& name) const {
    for (const auto& [key, value] : options) {
        if (key == name) {
            return value;
        }
    }
    return {};
}

int Office::run(const OfficeRequest& request, OfficeStreams streams) {
    if (request.verb == "import") {
        return importLines(request, streams);
    }
    if (request.verb == "rule") {
        return rule(request, streams);
    }
    if (request.verb == "devices") {
        return devices(request, streams);
    }
    if (request.verb == "arm") {
        return arm(request, streams);
    }
    return tellFailure(streams.err,
                       {ErrorCode::InvalidInput,
                        "The server does not know this command. It may be of another version.",
                        request.verb});
}

int Office::importLines(const OfficeRequest& request, OfficeStreams& streams) {
    const std::string name = request.option("name");
    const Result<store::ImportReport> report =
        database_.importLines(streams.in, name, streams.progress);
    if (!report) {
        return tellFailure(streams.err, report.error());
    }
    tellLines(streams.err, report->refused);
    tellLines(streams.err, report->waiting);
    if (request.wantsJson) {
        streams.out << JsonObject()
                           .text("file", name)
                           .count("lines", report->lines)
                           .count("taken", report->taken)
                           .count("already_there", report->there)
                           .count("not_counting", report->uncounted)
                           .count("unknown_descriptor", report->unknownDescriptors)
                           .count("unknown_subject", report->unknownSubjects)
                           .count("unknown_fields", report->unknownFields)
                           .count("refused", report->refusedCount)
                           .count("waiting", report->waitingCount)
                           .raw("refused_lines", linesAs(report->refused))
                           .raw("waiting_lines", linesAs(report->waiting))
                           .done()
                    << "\n";
    } else {
        streams.out << name << ": " << counted(report->lines, "line", "lines") << "; "
                    << counted(report->taken, "entry", "entries") << " taken, " << report->there
                    << " here already, " << report->refusedCount << " refused, "
                    << report->waitingCount << " waiting for what comes before them.\n";
        tellKept(streams.out, *report);
    }
    return report->refusedCount + report->waitingCount == 0 ? 0 : 1;
}

int Office::rule(const OfficeRequest& request, OfficeStreams& streams) {
    const std::string subject = request.option("subject");
    const Result<Bytes> value = store::readJson(request.option("value"));
    if (!value) {
        return tellFailure(
            streams.err,
            {ErrorCode::InvalidInput,
             "The value is no JSON. Write numbers plainly (65), texts in double quotes "
             "(\"black\"), and null to say that there is none.",
             value.error().message});
    }
    if (const Status allowed = checkRuledValue(subject, *value); !allowed) {
        return tellFailure(streams.err, allowed.error());
    }
    const Result<std::vector<store::HeadRow>> heads = database_.heads(subject);
    if (!heads) {
        return tellFailure(streams.err, heads.error());
    }
    if (heads->empty()) {
        return tellFailure(streams.err,
                           {ErrorCode::NotFound,
                            "Nothing is noted under \"" + subject +
                                "\". `bullace conflicts` lists what can be ruled on.",
                            {}});
    }
    const Draft ruling{request.option("by"),
                       journal::Kind::Ruling,
                       subject,
                       *value,
                       {},
                       request.option("why"),
                       {}};
    std::vector<journal::Place> places;
    for (const store::HeadRow& head : *heads) {
        places.push_back(head.place);
    }
    const std::vector<Draft> acts = store::rulingsOver(places, ruling);
    const auto written = database_.append(acts, clock_(), store::Grouping::OneAct);
    if (!written) {
        return tellFailure(streams.err, written.error());
    }
    const auto row = database_.state(subject);
    const std::string status =
        row && *row ? std::string(merge::stateWord((*row)->state)) : "unknown";
    if (request.wantsJson) {
        streams.out << JsonObject()
                           .text("subject", subject)
                           .text("status", status)
                           .count("heads_replaced", heads->size())
                           .text("origin", written->front().origin.text())
                           .count("seq", written->front().seq)
                           .done()
                    << "\n";
    } else {
        streams.out << subject << ": ruled " << journal::valueToJson(*value) << " over "
                    << heads->size() << (heads->size() == 1 ? " value" : " values") << "; it is "
                    << status << " now.\n";
    }
    return 0;
}

int Office::devices(const OfficeRequest& request, OfficeStreams& streams) {
    if (!request.option("revoke").empty()) {
        return revoke(request, streams);
    }
    if (!request.option("take-in").empty()) {
        return takeIn(request, streams);
    }
    const auto all = store::devices(database_);
    std::vector<store::ApartRow> apart;
    const Status read = database_.eachApart([&apart](const store::ApartRow& row) {
        apart.push_back(row);
        return true;
    });
    if (!all || !read) {
        return tellFailure(streams.err, all ? read.error() : all.error());
    }
    if (request.wantsJson) {
        JsonList list;
        for (const store::DeviceRow& device : *all) {
            list.raw(deviceJson(device));
        }
        JsonList laidApart;
        for (const store::ApartRow& row : apart) {
            laidApart.raw(JsonObject()
                              .number("number", row.id)
                              .text("origin", row.origin)
                              .count("first", row.first)
                              .count("last", row.last)
                              .text("device", row.device)
                              .text("reason", row.reason)
                              .done());
        }
        streams.out
            << JsonObject().raw("devices", list.done()).raw("apart", laidApart.done()).done()
            << "\n";
        return 0;
    }
    if (all->empty()) {
        streams.out << "No device is paired yet. `bullace arm` opens pairing for five minutes.\n";
    }
    const journal::Wall now = clock_();
    for (const store::DeviceRow& device : *all) {
        streams.out << journal::deviceText(device.letter, device.device) << "  " << device.name
                    << ": paired " << instant(device.pairedAtMs, now)
                    << (device.lastSyncMs ? ", last sync " + instant(*device.lastSyncMs, now)
                                          : ", never synced")
                    << clockWords(device.clockAheadMs.value_or(0))
                    << (device.revokedAtMs ? ", REVOKED " + instant(*device.revokedAtMs, now) : "")
                    << "\n";
    }
    for (const store::ApartRow& row : apart) {
        streams.out << "Apart, number " << row.id << ": " << row.origin << " " << row.first
                    << " to " << row.last << " from " << row.device
                    << (row.reason == "resent" ? ": office entries that came back; `--take-in " +
                                                     std::to_string(row.id) + "` takes them in\n"
                                               : ": they do not follow from what is held\n");
    }
    return 0;
}

int Office::revoke(const OfficeRequest& request, OfficeStreams& streams) {
    const auto revoked = store::revokeDevice(database_, request.option("revoke"), clock_().ms);
    if (!revoked) {
        return tellFailure(streams.err, revoked.error());
    }
    if (serving_.dropDevice) {
        serving_.dropDevice(revoked->keyHash);
    }
    if (request.wantsJson) {
        streams.out << deviceJson(*revoked) << "\n";
    } else {
        streams.out << revoked->name
                    << " is revoked: it is turned away from now on. What it sent before counts.\n";
    }
    return 0;
}

int Office::takeIn(const OfficeRequest& request, OfficeStreams& streams) {
    const std::string number = request.option("take-in");
    const auto taken = database_.takeInApart(std::strtoll(number.c_str(), nullptr, 10));
    if (!taken) {
        return tellFailure(streams.err, taken.error());
    }
    if (request.wantsJson) {
        streams.out << JsonObject().count("taken", *taken).done() << "\n";
    } else {
        streams.out << *taken << " office entries were taken in again.\n";
    }
    return 0;
}

int Office::arm(const OfficeRequest& request, OfficeStreams& streams) {
    if (!serving_.arm) {
        return tellFailure(
            streams.err,
            {ErrorCode::Refused,
             "No server runs on this database. Start `bullace serve` on it, then arm.",
             {}});
    }
    const auto codes = serving_.arm(request.option("letter") == "s" ? 's' : 't');
    if (!codes) {
        return tellFailure(streams.err, codes.error());
    }
    if (request.wantsJson) {
        streams.out << JsonObject()
                           .text("code", codes->first)
                           .text("qr", codes->second)
                           .number("minutes", 5)
                           .done()
                    << "\n";
    } else {
        streams.out << "Pairing is open for five minutes, for one device.\nCode to type: "
                    << codes->first << "\nText for a QR code: " << codes->second << "\n";
    }
    return 0;
}

} // namespace bullace::server
