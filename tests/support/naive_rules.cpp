// The second half of merging by brute force: from heads to values, by the rulebook and the
// descriptors' own rules.
#include "support/naive_merge.hpp"

#include <algorithm>
#include <cmath>
#include <regex>

namespace bullace::test {

namespace {

// DESIGN §7, of the descriptors that the tests use: kind, own rule, within, percent.
struct Own {
    const char* code;
    const char* kind;
    const char* rule;
    double within;
    bool isPercent;
};
constexpr double kNoBound = -1;
constexpr Own kOwn[] = {
    {"stage", "stage", "advanced", 2, false},
    {"stage-least", "stage", "ask", kNoBound, false},
    {"bud-break", "percent", "mean", 10, false},
    {"clusters", "count", "mean", 5, true},
    {"soluble-solids", "measure", "mean", 0.5, false},
    {"berries-per-cluster", "count", "ask", kNoBound, false},
    {"vigour", "score", "mean", 1, false},
    {"flower-sex", "code", "ask", kNoBound, false},
    {"note", "text", "all", kNoBound, false},
    {"yield", "measure", "ask", kNoBound, false},
};

// TRADE.md §1.
constexpr int kStages[] = {0,  1,  3,  5,  7,  9,  11, 12, 13, 14, 15, 16, 17, 18, 19,
                           53, 55, 57, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 71, 73,
                           75, 77, 79, 81, 83, 85, 89, 91, 92, 93, 95, 97, 99};

std::vector<std::string> partsOf(const std::string& path) {
    std::vector<std::string> parts{{}};
    for (const char c : path) {
        if (c == '/') {
            parts.emplace_back();
        } else {
            parts.back() += c;
        }
    }
    return parts;
}

// A day of the calendar, as a calendar on paper says.
bool isDay(const std::string& date) {
    const bool isSpelt = date.size() == 10 && date[4] == '-' && date[7] == '-' &&
                         date.find_first_not_of("0123456789-") == std::string::npos;
    if (!isSpelt) {
        return false;
    }
    const int year = std::stoi(date.substr(0, 4));
    const int month = std::stoi(date.substr(5, 2));
    const int day = std::stoi(date.substr(8, 2));
    const bool isLeap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    const int days[] = {31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1];
}

const Own* findOwn(const std::string& code) {
    const auto found = std::find_if(
        std::begin(kOwn), std::end(kOwn), [&](const Own& own) { return code == own.code; });
    return found == std::end(kOwn) ? nullptr : found;
}

// "B2-07-*" and its like against "B2-07-14"; both as the tests write them.
bool fits(const std::string& pattern, const std::string& place) {
    if (pattern == "*") {
        return true;
    }
    return pattern.back() == '*' ? place.rfind(pattern.substr(0, pattern.size() - 1), 0) == 0
                                 : pattern == place;
}

// B2-07-14, B2-07-*, B2-* or *, as DESIGN §6 lists them.
bool isPattern(const std::string& text) {
    static const std::regex form(
        R"(\*|[A-Za-z][A-Za-z0-9]*-(\*|[0-9]{2,}-(\*|[0-9]{2,}[A-Za-z]?)))");
    return std::regex_match(text, form);
}

const Json* partOf(const Json& value, const char* key) {
    const auto found = value.find(key);
    return found == value.end() || found->is_null() ? nullptr : &*found;
}

bool hasOnly(const Json& value, std::initializer_list<std::string> keys) {
    if (!value.is_object()) {
        return false;
    }
    const auto items = value.items();
    return std::all_of(items.begin(), items.end(), [&](const auto& item) {
        return std::find(keys.begin(), keys.end(), item.key()) != keys.end();
    });
}

std::optional<double> numberOf(const Json& value) {
    return value.is_number() ? std::optional(value.get<double>()) : std::nullopt;
}

Json written(double value) {
    const bool isWhole = std::trunc(value) == value && std::abs(value) <= 9007199254740991.0;
    return isWhole ? Json(static_cast<std::int64_t>(value)) : Json(value);
}

} // namespace

std::optional<NaiveStation::Rule> NaiveStation::readRule(const Json& value) {
    const Json* word = partOf(value, "rule");
    Rule rule;
    if (word == nullptr || !word->is_string()) {
        return std::nullopt;
    }
    rule.name = *word;
    const auto known = {"ask", "later", "advanced", "greatest", "least", "mean", "all"};
    if (std::find(known.begin(), known.end(), rule.name) == known.end()) {
        return std::nullopt;
    }
    if (const Json* within = partOf(value, "within")) {
        rule.isPercent = hasOnly(*within, {"percent"}) && within->contains("percent");
        rule.within = numberOf(rule.isPercent ? (*within)["percent"] : *within);
        if (!rule.within || *rule.within < 0) {
            return std::nullopt;
        }
    }
    return rule;
}

std::optional<NaiveStation::BookRule> NaiveStation::readBookRule(const Json& value) {
    if (!hasOnly(value, {"where", "from", "to", "descriptors", "rule", "within"})) {
        return std::nullopt;
    }
    const auto rule = readRule(value);
    if (!rule) {
        return std::nullopt;
    }
    BookRule read;
    read.rule = *rule;
    for (const auto& [key, into] :
         {std::pair("where", &read.where), {"from", &read.from}, {"to", &read.to}}) {
        if (const Json* part = partOf(value, key)) {
            if (!part->is_string()) {
                return std::nullopt;
            }
            *into = *part;
        }
    }
    const auto isDayOrNone = [](const std::string& date) { return date.empty() || isDay(date); };
    if (!isPattern(read.where) || !isDayOrNone(read.from) || !isDayOrNone(read.to)) {
        return std::nullopt;
    }
    if (const Json* codes = partOf(value, "descriptors")) {
        if (!codes->is_array()) {
            return std::nullopt;
        }
        read.descriptors = codes->get<std::vector<std::string>>();
    }
    return read;
}

void NaiveStation::readBook(const std::vector<NaiveState>& states) {
    book_.clear();
    ownRules_.clear();
    ownKinds_.clear();
    ownCodes_.clear();
    for (const NaiveState& state : states) {
        const std::vector<std::string> parts = partsOf(state.subject);
        if (parts[0] == "rulebook" && parts.size() == 2 && state.value) {
            if (const auto rule = readBookRule(*state.value)) {
                book_[std::stoull(parts[1])] = *rule;
            }
        }
        if (parts[0] != "descriptor" || parts.size() != 3) {
            continue;
        }
        if (parts[2] == "rule" && state.status != "retracted") {
            const bool isRead = state.value && hasOnly(*state.value, {"rule", "within"});
            ownRules_[parts[1]] = isRead ? readRule(*state.value).value_or(Rule{}) : Rule{};
        } else if (parts[2] == "kind" && state.value && state.value->is_string()) {
            ownKinds_[parts[1]] = *state.value;
        } else if (parts[2] == "codes" && state.value && state.value->is_array()) {
            ownCodes_[parts[1]] = state.value->get<std::vector<Json>>();
        }
    }
}

std::string NaiveStation::kindOf(const std::string& descriptor) const {
    const auto own = ownKinds_.find(descriptor);
    const Own* builtIn = findOwn(descriptor);
    return own != ownKinds_.end() ? own->second : builtIn != nullptr ? builtIn->kind : "";
}

NaiveStation::Rule NaiveStation::ruleFor(const std::vector<std::string>& parts) const {
    for (const auto& [n, rule] : book_) {
        const bool isInTime = parts[2] >= rule.from && (rule.to.empty() || parts[2] <= rule.to);
        const bool isOfIt = !rule.descriptors || std::find(rule.descriptors->begin(),
                                                           rule.descriptors->end(),
                                                           parts[3]) != rule.descriptors->end();
        if (isInTime && isOfIt && fits(rule.where, parts[1])) {
            return rule.rule;
        }
    }
    if (const auto own = ownRules_.find(parts[3]); own != ownRules_.end()) {
        return own->second;
    }
    const Own* builtIn = findOwn(parts[3]);
    if (builtIn == nullptr) {
        return {};
    }
    return {builtIn->rule,
            builtIn->within < 0 ? std::nullopt : std::optional(builtIn->within),
            builtIn->isPercent};
}

// A number, or the step of a stage along its list; nothing where the value has no place on a scale.
std::optional<double> NaiveStation::placeOnScale(const std::string& descriptor,
                                                 const Json& value) const {
    const std::string kind = kindOf(descriptor);
    if (kind != "stage") {
        return kind == "code" ? std::nullopt : numberOf(value);
    }
    if (const auto codes = ownCodes_.find(descriptor); codes != ownCodes_.end()) {
        const auto at = std::find(codes->second.begin(), codes->second.end(), value);
        return at == codes->second.end()
                   ? std::nullopt
                   : std::optional(static_cast<double>(at - codes->second.begin()));
    }
    const auto number = numberOf(value);
    const auto at = std::find_if(std::begin(kStages), std::end(kStages), [&](int code) {
        return number && *number == static_cast<double>(code);
    });
    return at == std::end(kStages) ? std::nullopt
                                   : std::optional(static_cast<double>(at - std::begin(kStages)));
}

std::optional<Json>
NaiveStation::decide(const std::string& descriptor, const Heads& heads, const Rule& rule) const {
    Json all = Json::array();
    std::vector<double> scale;
    for (const NaiveEntry* head : heads) {
        all.push_back(head->value);
        if (const auto at = placeOnScale(descriptor, head->value)) {
            scale.push_back(*at);
        }
    }
    if (rule.name == "ask" || rule.name == "all") {
        return rule.name == "all" ? std::optional(all) : std::nullopt;
    }
    const bool isMeasured = scale.size() == heads.size();
    const bool isStage = kindOf(descriptor) == "stage";
    double sum = 0;
    for (const double value : scale) {
        sum += value;
    }
    const double mean = sum / static_cast<double>(heads.size());
    if (rule.within) {
        const double allowed = rule.isPercent ? *rule.within / 100 * std::abs(mean) : *rule.within;
        if (!isMeasured || (rule.isPercent && isStage) ||
            *std::max_element(scale.begin(), scale.end()) -
                    *std::min_element(scale.begin(), scale.end()) >
                allowed) {
            return std::nullopt;
        }
    }
    if (rule.name == "later") {
        const NaiveEntry* latest = heads[0];
        for (const NaiveEntry* head : heads) {
            latest = std::tie(head->wallMs, head->place) > std::tie(latest->wallMs, latest->place)
                         ? head
                         : latest;
        }
        return latest->value;
    }
    if (!isMeasured || isStage != (rule.name == "advanced")) {
        return std::nullopt;
    }
    if (rule.name == "mean") {
        return written(mean);
    }
    std::size_t best = 0;
    for (std::size_t i = 1; i < scale.size(); ++i) {
        best = (rule.name == "least" ? scale[i] < scale[best] : scale[i] > scale[best]) ? i : best;
    }
    return heads[best]->value;
}

NaiveState NaiveStation::settle(const std::string& subject, const Heads& heads) const {
    NaiveState state{subject, "open", std::nullopt, {}, {}};
    std::size_t nulls = 0;
    bool isSame = true;
    bool isRuled = false;
    for (const NaiveEntry* head : heads) {
        state.heads.push_back(head->place);
        nulls += head->value.is_null() ? 1U : 0U;
        isSame = isSame && head->value == heads[0]->value;
        isRuled = isRuled || head->kind == "ruling";
    }
    if (nulls == heads.size()) {
        state.status = "retracted";
        return state;
    }
    if (nulls == 0 && isSame) {
        state.status = heads.size() == 1 ? "settled" : "agreed";
        state.value = heads[0]->value;
        return state;
    }
    const std::vector<std::string> parts = partsOf(subject);
    if (nulls > 0 || isRuled || parts[0] != "obs" || parts.size() < 4 || parts.size() > 5 ||
        !isDay(parts[2])) {
        return state;
    }
    const Rule rule = ruleFor(parts);
    if (auto value = decide(parts[3], heads, rule)) {
        state.status = "ruled";
        state.rule = rule.name;
        state.value = std::move(value);
    }
    return state;
}

} // namespace bullace::test
