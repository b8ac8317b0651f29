#include "tablet/label_view_model.hpp"

namespace bullace::tablet {

void LabelViewModel::tell(const QString& label, const QString& kind, const QString& lot) {
    label_ = label;
    kind_ = kind;
    lot_ = lot;
}

void LabelViewModel::open() {
    clear();
    title_ = tr("Write on it: %1").arg(label_);
    words_ =
        tr("%1, lot %2. At the bench the laboratory's own safety rules hold.").arg(kind_, lot_);
    codeText_ = label_;
    picture_ = Code;
    backText_ = tr("Back");
    offer({{tr("It is written"), {}, {}, false, {}, QStringLiteral("done")}});
    emit changed();
}

void LabelViewModel::choose(int index) {
    if (choices_.holds(index)) {
        emit closed();
    }
}

void LabelViewModel::back() {
    emit closed();
}

} // namespace bullace::tablet
