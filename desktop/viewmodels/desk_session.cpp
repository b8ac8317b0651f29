#include "desk/desk_session.hpp"

#include "desk/desk_words.hpp"

#include "core/journal/subject.hpp"
#include "quick/words.hpp"
#include "store/read_catalogue.hpp"

#include <algorithm>

namespace bullace::desk {

DeskSession::DeskSession(const Clock& clock, QObject* parent)
    : QObject(parent),
      clock_(clock),
      catalogue_(std::make_shared<vineyard::Catalogue>()) {}

DeskSession::~DeskSession() {
    // Its threads may still post: they end before what they post to.
    desk_.reset();
}

void DeskSession::setDesk(std::unique_ptr<office::Desk> desk) {
    desk_ = std::move(desk);
    catalogue_ = std::make_shared<vineyard::Catalogue>();
    settings_ = {};
    if (desk_ != nullptr) {
        read(
            this,
            office::Lane::Page,
            {},
            [](store::Database& database) { return readDeskSettings(database); },
            [this](DeskSettings settings) {
                settings_ = std::move(settings);
                emit settingsChanged();
            });
        readCatalogue();
    }
    emit deskChanged();
}

void DeskSession::change(DeskSettings settings) {
    settings_ = std::move(settings);
    emit settingsChanged();
    if (isReadOnly()) {
        return; // for as long as the program runs
    }
    keep(
        [kept = settings_](store::Database& database) { return keepDeskSettings(database, kept); });
}

void DeskSession::keep(std::function<Status(store::Database&)> what) {
    ++pending_;
    desk_->write([this, what = std::move(what)](store::Database& database) {
        const Status status = what(database);
        post([this, status] {
            --pending_;
            if (!status) {
                fail(status.error());
            }
        });
    });
}

void DeskSession::syncWithStation(QObject* context,
                                  std::function<void(const sync::net::SyncOutcome&)> then) {
    if (isReadOnly() || desk_->isStation()) {
        return;
    }
    ++pending_;
    auto guard = std::make_shared<QPointer<QObject>>(context);
    desk_->syncWithStation(
        [this, guard, then = std::move(then)](const sync::net::SyncOutcome& outcome) {
            post([this, guard, then, outcome] {
                --pending_;
                announce(Touches::Collection);
                if (!guard->isNull()) {
                    then(outcome);
                }
            });
        });
}

void DeskSession::serve(std::function<void(server::Station&)> task, std::function<void()> then) {
    if (desk_ == nullptr) {
        return;
    }
    ++pending_;
    desk_->serve([this, task = std::move(task), then = std::move(then)](server::Station& station) {
        task(station);
        post([this, then] {
            --pending_;
            then();
        });
    });
}

void DeskSession::readCatalogue() {
    catalogueToken_.cancel();
    catalogueToken_ = {};
    const bool isFirst = catalogue_->blocks().empty();
    read(
        this,
        isFirst ? office::Lane::Page : office::Lane::Background,
        catalogueToken_,
        [](store::Database& database) { return store::readCatalogue(database); },
        [this](std::unique_ptr<vineyard::Catalogue> catalogue) {
            catalogue_ = std::move(catalogue);
            emit catalogueChanged();
        });
}

void DeskSession::undo() {
    write(
        this,
        [author = settings_.author, &clock = clock_](store::Database& database) {
            return office::undoLast(database, author, clock);
        },
        [this](Result<office::Undone> undoneNow) {
            if (!undoneNow) {
                fail(undoneNow.error());
                return;
            }
            undone_ = std::move(*undoneNow);
            if (undone_.subjects.empty()) {
                emit told(tr("Nothing is left to undo."));
                return;
            }
            const QString what = subjectWords(*catalogue_, undone_.subjects.front());
            const auto more = static_cast<int>(undone_.subjects.size()) - 1;
            emit told(more == 0 ? tr("Undone: %1").arg(what)
                                : tr("Undone: %1 and %n more", nullptr, more).arg(what));
            emit undone(quick::fromText(undone_.subjects.front()));
        });
}

void DeskSession::redo() {
    if (!canRedo()) {
        return;
    }
    const QString first = quick::fromText(undone_.subjects.front());
    office::Act act = office::takingBack(undone_.undos, undone_.subjects, settings_.author);
    undone_ = {};
    perform(this, std::move(act), [this, first](Result<std::vector<journal::Place>> written) {
        if (!written) {
            fail(written.error());
            return;
        }
        emit told(tr("Done again."));
        emit undone(first);
    });
}

void DeskSession::fail(const Error& error) {
    if (error.code != ErrorCode::Cancelled) {
        emit told(quick::errorWords(error));
    }
}

Error DeskSession::readOnlyError() {
    return {ErrorCode::ReadOnly,
            "This station is open for reading only: nothing can be written here now.",
            {}};
}

void DeskSession::announce(Touches touches) {
    if (touches == Touches::Collection) {
        readCatalogue();
    }
    emit changed();
}

void DeskSession::perform(QObject* context,
                          office::Act act,
                          std::function<void(Result<std::vector<journal::Place>>)> then) {
    const bool isObservations =
        std::all_of(act.drafts.begin(), act.drafts.end(), [](const store::Draft& draft) {
            return journal::isBelowObs(draft.subject);
        });
    write(
        context,
        [act = std::move(act), &clock = clock_](store::Database& database) {
            return office::perform(database, act, clock);
        },
        std::move(then),
        isObservations ? Touches::Observations : Touches::Collection);
}

void DeskSession::post(std::function<void()> task) {
    QMetaObject::invokeMethod(this, std::move(task), Qt::QueuedConnection);
}

} // namespace bullace::desk
