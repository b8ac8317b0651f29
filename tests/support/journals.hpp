// Journals in memory for tests of the store: a tablet or a station on a disk of its own, with short
// ways to write, to look, and to hand everything over.
#pragma once

#include "core/journal/json_value.hpp"
#include "store/database.hpp"
#include "support/disk_surroundings.hpp"
#include "support/entries.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <sstream>
#include <string>
#include <vector>

namespace bullace::test {

inline store::Draft act(std::string subject, Bytes value, std::vector<journal::Place> over = {}) {
    const bool isObs = subject.starts_with("obs/");
    store::Draft draft;
    draft.author = "mk";
    draft.kind = isObs ? journal::Kind::Observe : journal::Kind::Catalog;
    draft.subject = std::move(subject);
    draft.value = std::move(value);
    draft.over = std::move(over);
    return draft;
}

inline store::Draft ruling(std::string subject, Bytes value, std::vector<journal::Place> over) {
    store::Draft draft = act(std::move(subject), std::move(value), std::move(over));
    draft.kind = journal::Kind::Ruling;
    draft.why = "seen again";
    return draft;
}

inline store::Draft undo(std::string subject, std::vector<journal::Place> taken) {
    store::Draft draft = act(std::move(subject), journal::nullValue(), std::move(taken));
    draft.kind = journal::Kind::Undo;
    return draft;
}

inline store::Draft retraction(std::string subject, std::vector<journal::Place> over) {
    store::Draft draft = act(std::move(subject), journal::nullValue(), std::move(over));
    draft.kind = journal::Kind::Retract;
    return draft;
}

class Journal {
public:
    Journal(store::Role role, std::uint64_t device) {
        auto made = store::Database::create(
            kPath, {role, "Invented", "UTC", device}, std::make_unique<DiskSurroundings>(disk_));
        REQUIRE(made.ok());
        database_ = std::move(*made);
    }

    [[nodiscard]] store::Database& database() { return *database_; }
    [[nodiscard]] FaultDisk& disk() { return disk_; }
    store::Database* operator->() { return database_.get(); }

    void reopen(const std::string& mark = "1") {
        database_.reset();
        auto opened =
            store::Database::open(kPath, true, std::make_unique<DiskSurroundings>(disk_, mark));
        REQUIRE_MESSAGE(opened.ok(), (opened ? "" : opened.error().message));
        database_ = std::move(*opened);
    }
    // The file and what lies beside it as they were then.
    [[nodiscard]] FileSet copy() {
        reopen();
        return disk_.snapshot();
    }
    void putBack(const FileSet& files) {
        database_.reset();
        disk_.restore(files);
        reopen();
    }

    std::vector<journal::Place> write(const std::vector<store::Draft>& acts,
                                      store::Grouping grouping = store::Grouping::Single) {
        const auto written = database_->append(acts, journal::Wall{1'780'000'000'000, 0}, grouping);
        REQUIRE_MESSAGE(written.ok(), (written ? "" : written.error().message));
        return *written;
    }
    journal::Place write(const store::Draft& one) {
        return write(std::vector<store::Draft>{one})[0];
    }

    // "settled 65", "ruled 63 advanced", "open"; empty for a subject without heads.
    [[nodiscard]] std::string says(const std::string& subject) {
        const auto row = database_->state(subject);
        REQUIRE(row.ok());
        if (!*row) {
            return {};
        }
        std::string text(merge::stateWord((*row)->state));
        text += (*row)->valueJson.empty() ? "" : " " + (*row)->valueJson;
        return text + ((*row)->rule ? " " + std::string(descriptors::ruleWord(*(*row)->rule)) : "");
    }
    [[nodiscard]] std::vector<journal::Place> headsOf(const std::string& subject) {
        const auto row = database_->state(subject);
        REQUIRE(row.ok());
        return *row ? (*row)->heads : std::vector<journal::Place>{};
    }
    [[nodiscard]] std::string exported() {
        std::ostringstream out;
        REQUIRE(database_->exportLines(out, {}).ok());
        return out.str();
    }
    // What every subject says, one a line.
    [[nodiscard]] std::string state() {
        std::string text;
        REQUIRE(database_
                    ->eachState("",
                                [&](const store::StateRow& row) {
                                    text += row.subject + " " + says(row.subject) + "\n";
                                    return true;
                                })
                    .ok());
        return text;
    }
    store::ImportReport import(const std::string& lines) {
        std::istringstream in(lines);
        const auto report = database_->importLines(in, "lines", {});
        REQUIRE_MESSAGE(report.ok(), (report ? "" : report.error().message));
        return *report;
    }

    // Takes all that the other holds and this one lacks; returns how many entries were new.
    std::uint64_t takeAllOf(Journal& other, const store::Source& source = {.isStation = true}) {
        std::uint64_t added = 0;
        journal::Vector mine = database_->vector();
        journal::Origin last{'t', 0, 0};
        for (const journal::BranchEnd& end : other->vector()) {
            if (end.origin == last) {
                continue;
            }
            last = end.origin;
            std::vector<journal::BranchEnd> held;
            for (const journal::BranchEnd& own : mine) {
                if (own.origin == end.origin) {
                    held.push_back(own);
                }
            }
            const auto parts = other->missing(end.origin, held);
            REQUIRE(parts.ok());
            for (const journal::Part& part : *parts) {
                const auto run = other->readRun(part.segment, part.from, 100'000, 100'000'000);
                REQUIRE(run.ok());
                const auto reports = database_->merge({*run}, source);
                REQUIRE_MESSAGE(reports.ok(), (reports ? "" : reports.error().message));
                added += (*reports)[0].added;
            }
        }
        return added;
    }

    void checkSound() {
        const auto verdict = database_->verify({});
        REQUIRE(verdict.ok());
        CHECK_MESSAGE(verdict->faults.empty(), (verdict->faults.empty() ? "" : verdict->faults[0]));
    }

private:
    static constexpr const char* kPath = "journal.db";
    FaultDisk disk_;
    std::unique_ptr<store::Database> database_;
};

} // namespace bullace::test
