// A sync over the network, from its key to what it says when it is over.
#include "tablet/sync_view_model.hpp"
#include "tablet/walk_words.hpp"

#include "store/peers.hpp"
#include "sync/server/device.hpp"

#include <QDateTime>

namespace bullace::tablet {

namespace {

constexpr std::int64_t kShowEveryMs = 250;

} // namespace

void SyncViewModel::startSync() {
    field::FieldBook& book = *session_.book();
    ownAtStart_ = book.ownEntries();
    sentAtStart_ = book.settings().sentEntries;
    server::SyncWish wish;
    wish.nowMs = book.pen().nowMs();
    wish.runThere = [this](const std::function<void()>& task) {
        QMetaObject::invokeMethod(this, task, Qt::BlockingQueuedConnection);
    };
    wish.progress = [this](const sync::Summary& summary) {
        const std::int64_t now = elapsed_.elapsed();
        if (now - toldAtMs_ >= kShowEveryMs) {
            toldAtMs_ = now;
            QMetaObject::invokeMethod(
                this, [this, summary] { onProgress(summary); }, Qt::QueuedConnection);
        }
    };
    store::Database* journal = &book.database();
    run([this, journal, wish] { outcome_ = server::syncDevice(*journal, wish, *cancel_); },
        [this] { onSynced(); });
    last_.clear();
    progress_.clear();
    show(Step::Overview);
}

void SyncViewModel::onProgress(const sync::Summary& summary) {
    if (!isBusy()) {
        return;
    }
    const double seconds =
        static_cast<double>(std::max<std::int64_t>(1, elapsed_.elapsed())) / 1000;
    const auto perSecond = static_cast<qulonglong>(
        static_cast<double>(summary.sentEntries + summary.receivedEntries) / seconds);
    progress_ = tr("%1 of %2 sent, %3 came, %4 a second.")
                    .arg(summary.sentEntries)
                    .arg(summary.toSend)
                    .arg(summary.receivedEntries)
                    .arg(perSecond);
    if (step_ == Step::Overview) {
        show(Step::Overview);
    }
}

QString SyncViewModel::summaryWords(const sync::Summary& summary) const {
    QString words = tr("%1 went, %2 came.").arg(summary.sentEntries).arg(summary.newHere);
    if (summary.photosSent + summary.photosReceived > 0) {
        words +=
            QStringLiteral(" ") +
            tr("Photos: %1 went, %2 came.").arg(summary.photosSent).arg(summary.photosReceived);
    }
    if (!summary.forked.empty()) {
        words += QStringLiteral(" ") + tr("A journal was copied and went two ways; both are kept.");
    }
    if (!summary.unlinkedThere.empty() || !summary.damaged.empty()) {
        words += QStringLiteral(" ") + tr("Some entries did not go through: tell the office.");
    }
    return words;
}

void SyncViewModel::onSynced() {
    progress_.clear();
    if (!outcome_) {
        return;
    }
    const sync::Summary& summary = outcome_->summary;
    if (summary.isComplete) {
        clockMs_ = summary.clockDifferenceMs;
    }
    last_ = summaryWords(summary);
    if (!outcome_->status) {
        last_ = errorWords(outcome_->status.error()) + QStringLiteral(" ") + last_;
    }
    session_.accept(session_.book()->noteSent(
        summary.isComplete ? ownAtStart_ : sentAtStart_ + summary.sentEntries));
    session_.accept(session_.book()->reload());
    if (step_ == Step::Overview) {
        show(Step::Overview);
    }
    emit session_.walked();
}

} // namespace bullace::tablet
