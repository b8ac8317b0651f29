#include "desk/word_codes.hpp"

#include "core/descriptors/catalog.hpp"
#include "quick/trade_words.hpp"
#include "quick/words.hpp"

namespace bullace::desk {

std::string codeOfWord(std::string_view word) {
    const QString wanted = quick::fromText(word).toCaseFolded();
    const auto isMeant = [&wanted](std::string_view code) {
        return quick::tradeWord(code).toCaseFolded() == wanted;
    };
    for (const std::string_view reason : descriptors::noneReasons()) {
        if (isMeant(reason)) {
            return std::string(reason);
        }
    }
    for (const descriptors::Descriptor& known : descriptors::builtInDescriptors()) {
        for (const std::string_view code : known.codes) {
            if (isMeant(code)) {
                return std::string(code);
            }
        }
        for (const descriptors::RecordPart& part : known.parts) {
            for (const std::string_view code : part.words) {
                if (isMeant(code)) {
                    return std::string(code);
                }
            }
        }
    }
    return {};
}

} // namespace bullace::desk
