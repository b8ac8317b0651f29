// What all pages work on: the book that is open, and how they tell the app of what happened.
#pragma once

#include "field/field_book.hpp"

#include <QObject>
#include <QString>

#include <functional>

namespace bullace::tablet {

// Signals between the pages and the app. It owns nothing of the journal.
class Session : public QObject {
    Q_OBJECT

public:
    explicit Session(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] field::FieldBook* book() const { return book_; }
    [[nodiscard]] field::Walk* walk() const { return book_ == nullptr ? nullptr : book_->walk(); }
    void setBook(field::FieldBook* book) {
        book_ = book;
        emit bookChanged();
    }
    // How the person who walks reads numbers.
    [[nodiscard]] UnitWishes wishes() const {
        if (book_ == nullptr) {
            return {};
        }
        const auto& units = book_->settings().units;
        const auto found = units.find(author());
        return found == units.end() ? UnitWishes{} : found->second;
    }
    [[nodiscard]] std::string author() const {
        return walk() != nullptr  ? walk()->plan().author
               : book_ == nullptr ? std::string{}
                                  : book_->settings().lastAuthor;
    }
    // False, and told, where the status is an error.
    bool accept(const Status& status) {
        if (!status) {
            emit failed(status.error());
        }
        return status.ok();
    }

signals:
    void bookChanged(); // another journal, or none
    void walked();      // the walk stands elsewhere, or something was noted or taken back
    void settingsChanged();
    void told(const QString& words); // one sentence for the stripe
    void failed(const bullace::Error& error);

private:
    field::FieldBook* book_ = nullptr;
};

} // namespace bullace::tablet
