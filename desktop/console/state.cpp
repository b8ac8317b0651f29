// Looking: state, conflicts, verify.
#include "console/commands.hpp"

#include "core/base/civil_date.hpp"
#include "core/journal/json_out.hpp"
#include "core/journal/subject.hpp"
#include "sync/server/summary_words.hpp"

namespace bullace::console {

using journal::JsonList;
using journal::JsonObject;
using store::StateRow;

namespace {

std::string headsJson(const StateRow& row) {
    JsonList heads;
    for (const journal::Place& place : row.heads) {
        heads.raw("[\"" + place.origin.text() + "\"," + std::to_string(place.seq) + "]");
    }
    return heads.done();
}

// {"subject", "status", "value", "rule", "heads"}, in this order and without spaces.
std::string stateLine(const StateRow& row) {
    JsonObject line;
    line.text("subject", row.subject)
        .text("status", merge::stateWord(row.state))
        .raw("value", row.valueJson.empty() ? "null" : row.valueJson);
    if (row.rule) {
        line.text("rule", descriptors::ruleWord(*row.rule));
    } else {
        line.raw("rule", "null");
    }
    return line.raw("heads", headsJson(row)).done();
}

// "B2-07-14, 2026-05-12, stage" for obs/B2-07-14/2026-05-12/stage; other subjects as they are.
std::string subjectWords(const std::string& subject) {
    const journal::Subject parts = journal::readSubject(subject);
    if (parts.form != journal::SubjectForm::Observation) {
        return subject;
    }
    std::string words = std::string(parts.id) + ", " + std::string(parts.date) + ", " +
                        std::string(parts.descriptor);
    return parts.sample.empty() ? words : words + ", sample " + std::string(parts.sample);
}

std::string headWords(const journal::EntryView& entry) {
    std::string words = entry.isNull() ? "retracted" : journal::valueToJson(entry.value);
    words += " by " + std::string(entry.author) + " (" + entry.origin.text() + " number " +
             std::to_string(entry.seq);
    if (entry.wall) {
        words += ", " + writeInstant(entry.wall->ms, entry.wall->minutes).substr(0, 16);
    }
    words += entry.kind == journal::Kind::Ruling ? ", a ruling)" : ")";
    return entry.why ? words + ": " + std::string(*entry.why) : words;
}

std::string headJson(const journal::EntryView& entry) {
    JsonObject head;
    head.text("origin", entry.origin.text())
        .count("seq", entry.seq)
        .text("kind", entry.kindText)
        .text("author", entry.author)
        .raw("value", journal::valueToJson(entry.value));
    if (entry.wall) {
        head.number("wall_ms", entry.wall->ms);
    }
    if (entry.why) {
        head.text("why", *entry.why);
    }
    return head.done();
}

} // namespace

int showState(const std::string& path, const std::string& under, Terminal& terminal) {
    const auto database = openForReading(path);
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    const Status read = (*database)->eachState(under, [&terminal](const StateRow& row) {
        terminal.out << stateLine(row) << '\n';
        return terminal.out.good();
    });
    return read ? 0 : tellFailure(terminal.err, read.error());
}

int showConflicts(const std::string& path, const std::string& under, Terminal& terminal) {
    const auto database = openForReading(path);
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    std::uint64_t count = 0;
    JsonList list;
    Status heads;
    const Status read = (*database)->eachConflict(under, [&](const StateRow& row) {
        ++count;
        const auto rows = (*database)->heads(row.subject);
        if (!rows) {
            heads = rows.error();
            return false;
        }
        JsonList values;
        std::string words;
        for (const store::HeadRow& head : *rows) {
            const auto entry = journal::readEntry(head.entry);
            if (entry) {
                values.raw(headJson(*entry));
                words += "    " + headWords(*entry) + "\n";
            }
        }
        if (terminal.wantsJson) {
            list.raw(JsonObject().text("subject", row.subject).raw("heads", values.done()).done());
        } else {
            terminal.out << subjectWords(row.subject) << "\n"
                         << words << "    to rule: " << row.subject << "\n";
        }
        return true;
    });
    if (!read || !heads) {
        return tellFailure(terminal.err, read ? heads.error() : read.error());
    }
    if (terminal.wantsJson) {
        terminal.out << list.done() << "\n";
    } else {
        terminal.out << (count == 0 ? "No conflict waits for a person.\n"
                                    : std::to_string(count) +
                                          (count == 1 ? " conflict waits" : " conflicts wait") +
                                          " for a person. `bullace rule` settles one.\n");
    }
    return 0;
}

int verify(const std::string& path, bool mend, Terminal& terminal) {
    const auto database = mend ? openForWriting(path, terminal) : openForReading(path);
    if (!database) {
        return tellFailure(terminal.err, database.error());
    }
    if (mend) {
        Ticker ticker(terminal, "Making the state anew");
        if (const Status made = (*database)->rebuild(ticker.progress()); !made) {
            return tellFailure(terminal.err, made.error());
        }
    }
    Ticker ticker(terminal, "Checking");
    const auto verdict = (*database)->verify(ticker.progress());
    const auto counts = (*database)->counts();
    if (!verdict || !counts) {
        return tellFailure(terminal.err, verdict ? counts.error() : verdict.error());
    }
    if (terminal.wantsJson) {
        JsonList faults;
        for (const std::string& fault : verdict->faults) {
            faults.text(fault);
        }
        terminal.out << JsonObject()
                            .count("entries", verdict->entries)
                            .count("subjects", verdict->subjects)
                            .count("open", counts->open)
                            .count("not_counting", counts->uncounted)
                            .count("waiting", counts->waiting)
                            .count("apart", counts->apart)
                            .raw("faults", faults.done())
                            .done()
                     << "\n";
        return verdict->faults.empty() ? 0 : 1;
    }
    for (const std::string& fault : verdict->faults) {
        terminal.err << fault << "\n";
    }
    if (!verdict->faults.empty()) {
        terminal.err
            << "bullace: \"" << path
            << "\" is not as it should be. Keep it as it is; go on with the last backup, or sync "
               "anew. If only "
               "what is told of subjects is wrong, `bullace verify --mend` makes that anew.\n";
        return 1;
    }
    terminal.out << server::counted(verdict->entries,
                                    "entry agrees with its digest",
                                    "entries agree with their digests")
                 << ", and the state of "
                 << server::counted(verdict->subjects, "subject", "subjects")
                 << " made anew is the same. "
                 << server::counted(counts->open, "conflict", "conflicts") << ", "
                 << counts->uncounted << " that do not count, " << counts->waiting << " waiting, "
                 << counts->apart << " apart.\n";
    return 0;
}

} // namespace bullace::console
