#include "desk/study_remarks.hpp"

#include "desk/study.hpp"

#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>

namespace bullace::desk {

using quick::fromText;
using quick::toText;

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(StudyRemarks)
};

} // namespace

void addRemarks(const Remarks& remarks, Remarks& to) {
    for (const Remark& remark : remarks) {
        if (std::ranges::find(to, remark) == to.end()) {
            to.push_back(remark);
        }
    }
}

void NamedRemarks::add(const std::string& accession, const Remarks& remarks) {
    for (const Remark& remark : remarks) {
        auto found =
            std::ranges::find(all_, remark, &std::pair<Remark, std::vector<std::string>>::first);
        if (found == all_.end()) {
            found = all_.insert(all_.end(), {remark, {}});
        }
        if (std::ranges::find(found->second, accession) == found->second.end()) {
            found->second.push_back(accession);
        }
    }
}

void NamedRemarks::tell(Remarks& to) const {
    constexpr std::size_t kMostNamed = 8;
    for (const auto& [remark, accessions] : all_) {
        QStringList names;
        for (std::size_t i = 0; i < std::min(kMostNamed, accessions.size()); ++i) {
            names << fromText(accessions[i]);
        }
        QString words = names.join(QStringLiteral(", "));
        if (accessions.size() > kMostNamed) {
            words +=
                QLatin1Char(' ') +
                Tr::tr("and %n more", nullptr, static_cast<int>(accessions.size() - kMostNamed));
        }
        to.push_back(
            {BULLACE_SENTENCE("Remark", "%1: %2"), {toText(words), toText(remarkWords(remark))}});
    }
}

} // namespace bullace::desk
