// What all pages of the desk work on: the station that is open, its collection, and the way to read
// and write it without waiting. Readings and writings are answered on the thread of the screen.
#pragma once

#include "desk/desk_settings.hpp"
#include "office/desk.hpp"
#include "office/settling.hpp"

#include "core/vineyard/catalogue.hpp"

#include <QObject>
#include <QPointer>
#include <QString>

#include <functional>
#include <memory>
#include <type_traits>

namespace bullace::desk {

class DeskSession : public QObject {
    Q_OBJECT

public:
    explicit DeskSession(const Clock& clock, QObject* parent = nullptr);
    ~DeskSession() override;
    DeskSession(const DeskSession&) = delete;
    DeskSession& operator=(const DeskSession&) = delete;
    DeskSession(DeskSession&&) = delete;
    DeskSession& operator=(DeskSession&&) = delete;

    // What a writing may have changed: the collection is read anew only where it has to be.
    enum class Touches { Observations, Collection };
    using Catalogue = std::shared_ptr<const vineyard::Catalogue>;

    // Takes over an open station, or none.
    void setDesk(std::unique_ptr<office::Desk> desk);
    [[nodiscard]] office::Desk* desk() const { return desk_.get(); }
    [[nodiscard]] const Clock& clock() const { return clock_; }
    [[nodiscard]] CivilDate today() const { return clock_.dateAt(clock_.nowMs()); }
    [[nodiscard]] bool isReadOnly() const { return desk_ == nullptr || desk_->isReadOnly(); }
    // The collection as it was last read; never null.
    [[nodiscard]] const Catalogue& catalogue() const { return catalogue_; }
    [[nodiscard]] const DeskSettings& settings() const { return settings_; }
    // Kept beside the entries of this computer.
    void change(DeskSettings settings);
    [[nodiscard]] std::string author() const { return settings_.author; }

    // Reads on a thread of its own, then calls `then` with what was read; an error is told on the
    // stripe. Not called where the token was cancelled, or `context` is gone, meanwhile.
    template<typename What, typename Then>
    void read(QObject* context, office::Lane lane, office::Token token, What what, Then then) {
        using Answer = std::invoke_result_t<What, store::Database&>;
        if (desk_ == nullptr) {
            return;
        }
        ++pending_;
        auto guard = std::make_shared<QPointer<QObject>>(context);
        desk_->read(lane,
                    token,
                    [this, guard, token, what = std::move(what), then = std::move(then)](
                        Result<store::Database*> database) mutable {
                        auto answer = std::make_shared<Answer>(database ? what(**database)
                                                                        : Answer(database.error()));
                        post([this, guard, token, answer, then = std::move(then)]() mutable {
                            --pending_;
                            if (token.isCancelled() || guard->isNull()) {
                                return;
                            }
                            if (!*answer) {
                                fail(answer->error());
                            } else {
                                then(std::move(**answer));
                            }
                        });
                    });
    }
    // Writes on a thread of its own. `then` gets what `what` returned, errors too; what was written
    // is read anew everywhere.
    template<typename What, typename Then>
    void write(QObject* context, What what, Then then, Touches touches = Touches::Collection) {
        using Answer = std::invoke_result_t<What, store::Database&>;
        if (isReadOnly()) {
            fail(readOnlyError());
            return;
        }
        ++pending_;
        auto guard = std::make_shared<QPointer<QObject>>(context);
        desk_->write([this, guard, touches, what = std::move(what), then = std::move(then)](
                         store::Database& database) mutable {
            auto answer = std::make_shared<Answer>(what(database));
            post([this, guard, touches, answer, then = std::move(then)]() mutable {
                --pending_;
                if (answer->ok()) {
                    undone_ = {}; // what follows an undo takes its redo away
                    announce(touches);
                }
                if (!guard->isNull()) {
                    then(std::move(*answer));
                }
            });
        });
    }
    // Keeps something for this desk alone, beside the entries: nothing is read anew.
    void keep(std::function<Status(store::Database&)> what);
    // Of an office device: syncs with its station; `then` gets how it went, and all is read anew.
    void syncWithStation(QObject* context, std::function<void(const sync::net::SyncOutcome&)> then);
    // Does something with the server, which may take its time.
    void serve(std::function<void(server::Station&)> task, std::function<void()> then);

    // Takes the last act of this office back, at any time; and the taking back again.
    void undo();
    void redo();
    [[nodiscard]] bool canRedo() const { return !undone_.undos.empty(); }
    // An error on the stripe, in the language of the screen.
    void fail(const Error& error);
    // Something was written, here or by a device: all pages are read anew.
    void announce(Touches touches);
    // Writes an act; `then` gets what was written, or why nothing was.
    void perform(QObject* context,
                 office::Act act,
                 std::function<void(Result<std::vector<journal::Place>>)> then);
    // Whether everything that was asked for has been answered.
    [[nodiscard]] bool isIdle() const { return pending_ == 0; }
    // From any thread: done on the thread of the screen.
    void post(std::function<void()> task);

signals:
    void deskChanged();      // another station, or none
    void changed();          // something was written
    void catalogueChanged(); // the collection was read anew
    void settingsChanged();
    void undone(const QString& firstSubject); // by undo() or redo()
    void told(const QString& words);          // one sentence for the stripe
    void asked(const QString& page,
               const QString& about); // another page is wanted: "vine", its position

private:
    void readCatalogue();
    [[nodiscard]] static Error readOnlyError();

    const Clock& clock_;
    std::unique_ptr<office::Desk> desk_;
    Catalogue catalogue_;
    DeskSettings settings_;
    office::Token catalogueToken_;
    office::Undone undone_; // by the last undo()
    int pending_ = 0;
};

} // namespace bullace::desk
