#include "desk/card_words.hpp"

#include "core/vineyard/passport.hpp"
#include "quick/words.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace bullace::desk {

namespace {

struct Tr {
    Q_DECLARE_TR_FUNCTIONS(CardWords)
};

struct FieldName {
    std::string_view field;
    const char* words;
};

constexpr std::array kNames{
    FieldName{"name", QT_TRANSLATE_NOOP("CardWords", "Name")},
    FieldName{"number", QT_TRANSLATE_NOOP("CardWords", "The office's number")},
    FieldName{"status", QT_TRANSLATE_NOOP("CardWords", "Status")},
    FieldName{"taxon", QT_TRANSLATE_NOOP("CardWords", "Taxon")},
    FieldName{"verified", QT_TRANSLATE_NOOP("CardWords", "Taxon verified")},
    FieldName{"flower-sex", QT_TRANSLATE_NOOP("CardWords", "Flower sex, OIV 151")},
    FieldName{"mother", QT_TRANSLATE_NOOP("CardWords", "Seed parent")},
    FieldName{"father", QT_TRANSLATE_NOOP("CardWords", "Pollen parent")},
    FieldName{"rows", QT_TRANSLATE_NOOP("CardWords", "Rows and their places")},
    FieldName{"closed-until", QT_TRANSLATE_NOOP("CardWords", "Closed until, that day too")},
    FieldName{"no-tasting-until", QT_TRANSLATE_NOOP("CardWords", "No tasting until, that day too")},
    FieldName{"title", QT_TRANSLATE_NOOP("CardWords", "Title")},
    FieldName{"where", QT_TRANSLATE_NOOP("CardWords", "Where")},
    FieldName{"descriptors", QT_TRANSLATE_NOOP("CardWords", "Descriptors")},
    FieldName{"order", QT_TRANSLATE_NOOP("CardWords", "Order of the rows")},
    FieldName{"every-nth-row", QT_TRANSLATE_NOOP("CardWords", "Every nth row")},
    FieldName{"both-sides", QT_TRANSLATE_NOOP("CardWords", "Both sides")},
    FieldName{"samples", QT_TRANSLATE_NOOP("CardWords", "Samples")},
    FieldName{"precision", QT_TRANSLATE_NOOP("CardWords", "Precision of the mean, percent")},
    FieldName{"blind", QT_TRANSLATE_NOOP("CardWords", "Blind: accessions hidden")},
    FieldName{"repeat", QT_TRANSLATE_NOOP("CardWords", "A blind repeat")},
    FieldName{"decision", QT_TRANSLATE_NOOP("CardWords", "A decision: history shown")},
    FieldName{"only-what-stands-out", QT_TRANSLATE_NOOP("CardWords", "Only what stands out")},
    FieldName{"least", QT_TRANSLATE_NOOP("CardWords", "The least advanced stage, too")},
    FieldName{"stages", QT_TRANSLATE_NOOP("CardWords", "Stages offered")},
    FieldName{"from", QT_TRANSLATE_NOOP("CardWords", "From")},
    FieldName{"by", QT_TRANSLATE_NOOP("CardWords", "By")},
    FieldName{"closed", QT_TRANSLATE_NOOP("CardWords", "Closed on")},
    FieldName{"kind", QT_TRANSLATE_NOOP("CardWords", "Kind")},
    FieldName{"unit", QT_TRANSLATE_NOOP("CardWords", "Unit")},
    FieldName{"range", QT_TRANSLATE_NOOP("CardWords", "Range")},
    FieldName{"decimals", QT_TRANSLATE_NOOP("CardWords", "Decimals")},
    FieldName{"sampled", QT_TRANSLATE_NOOP("CardWords", "Sampled")},
    FieldName{"codes", QT_TRANSLATE_NOOP("CardWords", "Words of the list")},
    FieldName{"rule", QT_TRANSLATE_NOOP("CardWords", "Rule")},
    FieldName{"off", QT_TRANSLATE_NOOP("CardWords", "Switched off")},
    FieldName{"date", QT_TRANSLATE_NOOP("CardWords", "Date")},
    FieldName{"amount", QT_TRANSLATE_NOOP("CardWords", "Amount")},
    FieldName{"kept", QT_TRANSLATE_NOOP("CardWords", "Where it is kept")},
    FieldName{"label", QT_TRANSLATE_NOOP("CardWords", "Label")},
    FieldName{"cross", QT_TRANSLATE_NOOP("CardWords", "From the cross")},
    FieldName{"earlier", QT_TRANSLATE_NOOP("CardWords", "Known before as")},
    FieldName{"seeds", QT_TRANSLATE_NOOP("CardWords", "Seeds")},
    FieldName{"sinkers", QT_TRANSLATE_NOOP("CardWords", "Seeds that sank in water")},
    FieldName{"stratified", QT_TRANSLATE_NOOP("CardWords", "Stratified on")},
    FieldName{"sown", QT_TRANSLATE_NOOP("CardWords", "Sown on")},
    FieldName{"germinated", QT_TRANSLATE_NOOP("CardWords", "Seeds germinated")},
    FieldName{"germinated-on", QT_TRANSLATE_NOOP("CardWords", "Germinated on")},
    FieldName{"mother-at", QT_TRANSLATE_NOOP("CardWords", "Position of the seed parent")},
    FieldName{"pollen-lot", QT_TRANSLATE_NOOP("CardWords", "Pollen lot")}};

} // namespace

QString fieldWords(std::string_view field) {
    const auto* found = std::find_if(
        kNames.begin(), kNames.end(), [field](const FieldName& one) { return one.field == field; });
    if (found != kNames.end()) {
        return Tr::tr(found->words);
    }
    const vineyard::PassportField* passport = vineyard::findPassportField(field);
    return quick::fromText(passport == nullptr ? field : passport->mcpd);
}

} // namespace bullace::desk
