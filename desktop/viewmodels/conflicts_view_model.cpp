// The list of conflicts, and which of them is on the screen.
#include "desk/conflicts_view_model.hpp"

#include "desk/desk_words.hpp"
#include "desk/photo_reading.hpp"

#include "quick/field_sign.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace bullace::desk {

using quick::FieldSign;
using quick::fromText;
using quick::toText;

ConflictsViewModel::ConflictsViewModel(DeskSession& session, QObject* parent)
    : DeskPage(session, parent),
      areNamesShown_(true) {
    connect(&table_, &GridModel::currentChanged, this, &ConflictsViewModel::showCurrent);
    connect(&session_, &DeskSession::undone, this, [this](const QString& subject) {
        if (const int row = table_.rowOf(subject); row >= 0) {
            table_.setCurrent(row);
            readCurrent();
        }
    });
}

QString ConflictsViewModel::help() const {
    return tr("Each conflict shows the values that stand against each other, in an order that says "
              "nothing. Look at the vine's neighbours on the wire and at the facts. Choose a value "
              "by its number, keep both with B, type another with E; then press the key of your "
              "reason. Only then is anything written. Enter alone decides nothing. Ctrl+Z takes "
              "the last decision back, at any time, also tomorrow.");
}

int ConflictsViewModel::openCount() const {
    return static_cast<int>(
        std::count_if(items_.begin(), items_.end(), [](const Item& item) { return item.isOpen; }));
}

void ConflictsViewModel::refresh() {
    if (session_.desk() == nullptr) {
        return;
    }
    areNamesShown_ = session_.settings().showsNames;
    listToken_.cancel();
    listToken_ = {};
    session_.read(
        this,
        office::Lane::Background,
        listToken_,
        [token = listToken_](store::Database& database) {
            return office::waitingConflicts(database, token);
        },
        [this](std::vector<office::Waiting> waiting) { takeList(std::move(waiting)); });
    session_.read(
        this,
        office::Lane::Background,
        listToken_,
        [token = listToken_](store::Database& database) {
            return office::readOverruled(database, token);
        },
        [this](std::map<office::RuleOf, office::Overruled> overruled) {
            overruled_ = std::move(overruled);
            if (file_) {
                facts_.setRows(factRows());
            }
        });
}

void ConflictsViewModel::leave() {
    listToken_.cancel();
    caseToken_.cancel();
    choice_.reset();
    choiceText_.clear();
    // The next time the list is built anew, without what is settled.
    items_.clear();
    decidedMs_.clear();
    isShownAgain_ = false;
    file_.reset();
}

void ConflictsViewModel::speakAgain() {
    showList();
    showCase();
}

// The first reading makes the list; later ones mark what became of its lines and add what is new at
// the end, so that nothing moves under the eyes.
void ConflictsViewModel::takeList(std::vector<office::Waiting> waiting) {
    std::unordered_map<std::string_view, office::Waiting*> open; // not in the list yet
    for (office::Waiting& one : waiting) {
        open.emplace(one.subject, &one);
    }
    for (Item& item : items_) {
        const auto found = open.find(item.waiting.subject);
        const bool isOpen = found != open.end();
        if (!isOpen && item.isOpen && item.outcome.isEmpty()) {
            item.outcome = tr("settled elsewhere");
        }
        item.outcome = isOpen ? QString() : item.outcome;
        item.isOpen = isOpen;
        if (isOpen) {
            item.waiting.isLookedAgain = found->second->isLookedAgain;
            open.erase(found);
        }
    }
    for (office::Waiting& one : waiting) {
        if (open.erase(one.subject) > 0) {
            items_.push_back({std::move(one), true, isShownAgain_, {}});
        }
    }
    isShownAgain_ = true;
    showList();
    if (!choice_) {
        readCurrent();
    }
}

// What thousands of lines say alike is worded once for all of them.
class ConflictsViewModel::ListWords {
public:
    explicit ListWords(const vineyard::Catalogue& catalogue) : catalogue_(catalogue) {}
    QString open;
    QString waits;
    QString settled;

    const QString& descriptor(std::string_view code) {
        return once(descriptors_, code, [&] { return descriptorWords(catalogue_, code); });
    }
    const QString& date(std::string_view date) {
        return once(dates_, date, [&] { return quick::dateWords(*readDate(date)); });
    }

private:
    using Said = std::map<std::string, QString, std::less<>>;
    template<typename Word>
    static const QString& once(Said& said, std::string_view what, Word word) {
        const auto found = said.find(what);
        return found != said.end() ? found->second : said.emplace(what, word()).first->second;
    }

    const vineyard::Catalogue& catalogue_;
    Said descriptors_;
    Said dates_;
};

GridRow ConflictsViewModel::rowOf(const Item& item, ListWords& words) const {
    const journal::Subject subject = journal::readSubject(item.waiting.subject);
    const bool isObservation = subject.form == journal::SubjectForm::Observation;
    const bool isLookedAgain = item.waiting.isLookedAgain;
    GridRow row;
    row.key = fromText(item.waiting.subject);
    row.sign = !item.isOpen    ? FieldSign::Done
               : isLookedAgain ? FieldSign::Waiting
                               : FieldSign::Open;
    row.signWord = !item.isOpen ? words.settled : isLookedAgain ? words.waits : words.open;
    row.cells << (isObservation ? fromText(subject.id)
                                : subjectWords(*session_.catalogue(), item.waiting.subject))
              << (isObservation ? words.descriptor(subject.descriptor) : QString())
              << (!item.outcome.isEmpty() ? item.outcome
                  : isObservation         ? words.date(subject.date)
                                          : QString());
    row.isStrong = item.isOpen;
    return row;
}

void ConflictsViewModel::showList() {
    table_.setColumns(
        tr("Conflicts"),
        {{tr("Where"), 12}, {tr("What"), 15, false, true}, {tr("When, or outcome"), 17}});
    std::map<std::pair<bool, office::Cause>, int> counts;
    for (const Item& item : items_) {
        ++counts[{item.isNew, item.waiting.cause}];
    }
    std::vector<GridRow> rows;
    rows.reserve(items_.size() + counts.size());
    ListWords said(*session_.catalogue());
    said.open = tr("open");
    said.waits = tr("waits for a second look");
    said.settled = tr("settled");
    std::optional<std::pair<bool, office::Cause>> group;
    for (const Item& item : items_) {
        const std::pair<bool, office::Cause> now{item.isNew, item.waiting.cause};
        if (!group || *group != now) {
            group = now;
            const QString words = causeWords(now.second) + QStringLiteral(" (%1)").arg(counts[now]);
            rows.push_back(headingRow(
                item.isNew ? tr("New: %1").arg(words) : words,
                QStringLiteral("group %1 %2").arg(now.first).arg(static_cast<int>(now.second))));
        }
        rows.push_back(rowOf(item, said));
    }
    table_.setRows(std::move(rows));
    const int open = openCount();
    const auto all = static_cast<int>(items_.size());
    say(tr("Conflicts"),
        all == 0 ? tr("Nothing waits for a decision.")
                 : tr("%1 of %2 settled, %n left.", nullptr, open).arg(all - open).arg(all) +
                       waitWords());
    offer();
}

// How long the oldest waits, and about how long the rest will take at the pace of the last ones.
QString ConflictsViewModel::waitWords() const {
    constexpr std::int64_t kDayMs = 86'400'000;
    constexpr std::int64_t kMinuteMs = 60'000;
    constexpr std::size_t kDecisionsOfPace = 5;
    std::int64_t oldest = 0;
    for (const Item& item : items_) {
        const std::int64_t since = item.isOpen ? item.waiting.sinceMs : 0;
        oldest = since > 0 && (oldest == 0 || since < oldest) ? since : oldest;
    }
    QString words;
    const std::int64_t age = session_.clock().nowMs() - oldest;
    if (oldest > 0 && age >= kDayMs) {
        words += QStringLiteral(" ") + tr("The oldest waits for %1.").arg(ageWords(age));
    }
    const std::size_t decided = decidedMs_.size();
    if (decided > kDecisionsOfPace && openCount() > 0) {
        const std::int64_t each = (decidedMs_.back() - decidedMs_[decided - 1 - kDecisionsOfPace]) /
                                  static_cast<std::int64_t>(kDecisionsOfPace);
        const std::int64_t left = each * openCount() / kMinuteMs + 1;
        words += QStringLiteral(" ") +
                 tr("About %n minute(s) at this pace.", nullptr, static_cast<int>(left));
    }
    return words;
}

void ConflictsViewModel::showCurrent() {
    if (choice_) {
        choice_.reset(); // another conflict came onto the screen: nothing is carried over to it
        choiceText_.clear();
    }
    dropQuestion();
    readCurrent();
}

void ConflictsViewModel::readCurrent() {
    caseToken_.cancel();
    const std::string subject = toText(table_.currentKey());
    if (subject.empty()) {
        file_.reset();
        showCase();
        return;
    }
    caseToken_ = {};
    session_.read(
        this,
        office::Lane::Page,
        caseToken_,
        [subject, catalogue = session_.catalogue()](store::Database& database) {
            return office::readCase(database, *catalogue, subject);
        },
        [this](office::CaseFile file) {
            // While a choice waits for its reason the screen stays as it was; writing will tell.
            if (!choice_) {
                file_ = std::move(file);
                showCase();
                readPhotos();
            }
        });
}

// Behind the case, which does not wait for them.
void ConflictsViewModel::readPhotos() {
    if (file_->photos.empty()) {
        photos_.setPictures({});
        return;
    }
    session_.read(
        this,
        office::Lane::Page,
        caseToken_,
        [digests = file_->photos](store::Database& database) {
            return desk::readPhotos(database, digests);
        },
        [this](std::vector<QImage> pictures) {
            photos_.setPictures(std::move(pictures));
            offer();
        });
}

ConflictsViewModel::Item* ConflictsViewModel::item(const std::string& subject) {
    const auto found = std::find_if(items_.begin(), items_.end(), [&subject](const Item& item) {
        return item.waiting.subject == subject;
    });
    return found == items_.end() ? nullptr : &*found;
}

ConflictsViewModel::Item* ConflictsViewModel::currentItem() {
    return item(toText(table_.currentKey()));
}

void ConflictsViewModel::open(int row) {
    // Enter on a line only looks at it.
    table_.setCurrent(row);
}

void ConflictsViewModel::goToNextOpen() {
    const int from = table_.current();
    const int rows = table_.count();
    std::unordered_set<std::string_view> open;
    for (const Item& item : items_) {
        if (item.isOpen) {
            open.insert(item.waiting.subject);
        }
    }
    for (int step = 1; step <= rows; ++step) {
        const int row = (from + step) % rows;
        if (open.count(toText(table_.at(row).key)) > 0) {
            table_.setCurrent(row);
            return;
        }
    }
    readCurrent();
}

void ConflictsViewModel::goToGroup(int by) {
    int row = table_.current();
    const auto isHeading = [this](int at) { return table_.holds(at) && table_.at(at).isHeading; };
    // Back to the heading of this group, then on to the one before it or behind it.
    while (table_.holds(row) && !isHeading(row)) {
        row += by;
    }
    if (by < 0 && table_.holds(row)) {
        --row;
        while (table_.holds(row) && !isHeading(row)) {
            --row;
        }
    }
    if (table_.holds(row)) {
        table_.setCurrent(table_.next(row, 1));
    } else if (by < 0) {
        table_.setCurrent(table_.next(-1, 1));
    }
}

} // namespace bullace::desk
