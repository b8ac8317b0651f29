#include "store/json_reader.hpp"

#include "core/base/numbers.hpp"
#include "core/journal/json_value.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <string>
#include <vector>

namespace bullace::store {

namespace {

// Takes the members of the outermost object one by one, as their values are complete; false ends
// the reading.
class MemberSink {
public:
    virtual ~MemberSink() = default;
    MemberSink() = default;
    MemberSink(const MemberSink&) = delete;
    MemberSink& operator=(const MemberSink&) = delete;
    MemberSink(MemberSink&&) = delete;
    MemberSink& operator=(MemberSink&&) = delete;
    virtual bool take(std::string_view name, Bytes value) = 0;
};

// Receives the events of nlohmann's reader and builds the CBOR of each finished list or map on a
// stack of its own. With a sink, the text must be an object, whose members go to the sink instead.
class CborBuilder : public nlohmann::json_sax<nlohmann::json> {
public:
    explicit CborBuilder(MemberSink* sink = nullptr) : sink_(sink) {}

    bool null() override { return item(journal::nullValue()); }
    bool boolean(bool value) override { return item(journal::booleanValue(value)); }
    bool number_integer(number_integer_t value) override {
        return value >= -kGreatestInteger ? item(journal::integerValue(value))
                                          : item(journal::floatValue(static_cast<double>(value)));
    }
    bool number_unsigned(number_unsigned_t value) override {
        return value <= static_cast<std::uint64_t>(kGreatestInteger)
                   ? item(journal::integerValue(static_cast<std::int64_t>(value)))
                   : item(journal::floatValue(static_cast<double>(value)));
    }
    bool number_float(number_float_t value, const string_t& /*text*/) override {
        return std::isfinite(value) ? item(journal::floatValue(value))
                                    : fail("a number is not finite");
    }
    bool string(string_t& value) override {
        if (value.size() > limits_.text) {
            return fail("a text is too long");
        }
        return isCleanUtf8(value) ? item(journal::textValue(value))
                                  : fail("a text is not clean UTF-8");
    }
    bool binary(binary_t& /*value*/) override { return fail("it holds raw bytes"); }
    bool start_object(std::size_t /*size*/) override { return open(true); }
    bool start_array(std::size_t /*size*/) override { return open(false); }
    bool key(string_t& value) override {
        if (value.size() > limits_.text || !isCleanUtf8(value)) {
            return fail("a name is too long or not clean UTF-8");
        }
        stack_.back().key = value;
        return countElement();
    }
    bool end_object() override {
        if (stack_.back().members.hasRepeatedKey()) {
            return fail("a name stands twice in one object");
        }
        return close(stack_.back().members.bytes());
    }
    bool end_array() override { return close(journal::listValue(stack_.back().items)); }
    bool parse_error(std::size_t position,
                     const std::string& /*token*/,
                     const nlohmann::detail::exception& /*error*/) override {
        if (failure_.empty()) {
            failure_ = "it is no JSON from character " + std::to_string(position) + " on";
        }
        return false;
    }

    [[nodiscard]] const std::string& failure() const { return failure_; }
    Bytes take() { return std::move(result_); }

private:
    struct Open {
        bool isMap = false;
        std::string key;
        journal::MapValue members;
        std::vector<Bytes> items;
    };

    bool fail(const char* reason) {
        failure_ = reason;
        return false;
    }
    bool countElement() {
        return ++elements_ <= limits_.elements || fail("there are too many elements");
    }
    bool open(bool isMap) {
        // The fields of a line stand in an object that is no part of their values.
        if (stack_.size() >= limits_.depth + (sink_ == nullptr ? 0U : 1U)) {
            return fail("lists or objects are nested too deep");
        }
        isObject_ = stack_.empty() ? isMap : isObject_;
        stack_.push_back({isMap, {}, {}, {}});
        return countElement();
    }
    bool close(Bytes value) {
        stack_.pop_back();
        --elements_; // item() counts it again
        return item(std::move(value));
    }
    bool item(Bytes value) {
        if (!countElement()) {
            return false;
        }
        if (stack_.empty()) {
            result_ = std::move(value);
            return sink_ == nullptr || isObject_ ||
                   fail("it is no object with the fields of an entry");
        }
        Open& top = stack_.back();
        if (!top.isMap) {
            top.items.push_back(std::move(value));
        } else if (sink_ != nullptr && stack_.size() == 1) {
            return sink_->take(top.key, std::move(value));
        } else {
            top.members.add(top.key, std::move(value));
        }
        return true;
    }

    MemberSink* sink_;
    bool isObject_ = false; // the outermost value is one
    CborLimits limits_;
    std::size_t elements_ = 0;
    std::vector<Open> stack_;
    std::string failure_;
    Bytes result_;
};

Error badField(std::string_view name, std::string_view wanted) {
    return {ErrorCode::InvalidInput,
            "\"" + std::string(name) + "\" must be " + std::string(wanted) + ".",
            {}};
}

Error twice(std::string_view name) {
    return {ErrorCode::InvalidInput, "\"" + std::string(name) + "\" stands twice.", {}};
}

// Takes the fields of one line as they come. Each taker returns false where the value has not the
// field's type.
class LineReader : public MemberSink {
public:
    bool take(std::string_view name, Bytes value) override {
        static constexpr struct {
            std::string_view name;
            bool (LineReader::*taker)(BytesView);
            std::string_view wanted;
        } kFields[] = {
            {"origin", &LineReader::origin, "a letter, 16 hex digits, a point and a number"},
            {"seq", &LineReader::seq, "a whole number from 1 on"},
            {"count", &LineReader::count, "a whole number"},
            {"wall", &LineReader::wall, "[milliseconds, minutes from UTC]"},
            {"author", &LineReader::author, "a text"},
            {"kind", &LineReader::kind, "a text"},
            {"subject", &LineReader::subject, "a text"},
            {"value", &LineReader::value, "a value"},
            {"over", &LineReader::over, "a list of [origin, seq]"},
            {"group", &LineReader::group, "[first seq, number of entries]"},
            {"why", &LineReader::why, "a text"},
            {"as", &LineReader::as, "a text"},
            {"digest", &LineReader::digest, "64 lower-case hex digits"},
        };
        unsigned bit = 1;
        for (const auto& field : kFields) {
            if (field.name == name) {
                if ((seen_ & bit) != 0) {
                    error_ = twice(name);
                } else if (!(this->*field.taker)(value)) {
                    error_ = badField(name, field.wanted);
                }
                seen_ |= bit;
                return !error_;
            }
            bit <<= 1U;
        }
        extra_.add(name, std::move(value));
        return true;
    }

    [[nodiscard]] const std::optional<Error>& error() const { return error_; }

    Result<EntryLine> finish() {
        static constexpr std::pair<unsigned, std::string_view> kNeeded[] = {
            {0, "origin"}, {1, "seq"}, {2, "count"}, {4, "author"}, {5, "kind"}, {6, "subject"}};
        for (const auto& [bit, name] : kNeeded) {
            if ((seen_ >> bit & 1U) == 0) {
                return Error{
                    ErrorCode::InvalidInput, "\"" + std::string(name) + "\" is missing.", {}};
            }
        }
        if (line_.entry.value.empty()) {
            line_.entry.value = journal::nullValue();
        }
        if (extra_.hasRepeatedKey()) {
            return twice("A further field");
        }
        if (!extra_.isEmpty()) {
            line_.entry.extra = extra_.bytes();
            line_.hasUnknownFields = true;
        }
        return std::move(line_);
    }

private:
    static bool text(BytesView value, std::string& into) {
        const auto read = journal::textOf(value);
        into = read.value_or(std::string_view{});
        return read.has_value();
    }
    static bool optionalText(BytesView value, std::optional<std::string>& into) {
        const auto read = journal::textOf(value);
        if (read) {
            into = std::string(*read);
        }
        return read || journal::isNullValue(value);
    }
    static std::optional<std::int64_t> integer(BytesView value) {
        CborReader in(value);
        CborType type{};
        std::int64_t read = 0;
        return in.peek(type) && type == CborType::Integer && in.integer(read) ? std::optional(read)
                                                                              : std::nullopt;
    }
    static bool count(BytesView value, std::uint64_t& into, std::int64_t least) {
        const auto read = integer(value);
        into = read && *read >= least ? static_cast<std::uint64_t>(*read) : 0;
        return read && *read >= least;
    }
    static bool place(BytesView value, journal::Place& into) {
        const auto pair = journal::itemsOf(value);
        const auto spelt = pair && pair->size() == 2 ? journal::textOf((*pair)[0]) : std::nullopt;
        const auto read = spelt ? journal::readOrigin(*spelt) : std::nullopt;
        into.origin = read.value_or(journal::Origin{});
        return read && count((*pair)[1], into.seq, 1);
    }

    bool origin(BytesView value) {
        const auto spelt = journal::textOf(value);
        const auto read = spelt ? journal::readOrigin(*spelt) : std::nullopt;
        line_.entry.origin = read.value_or(journal::Origin{});
        return read.has_value();
    }
    bool seq(BytesView value) { return count(value, line_.entry.seq, 1); }
    bool count(BytesView value) { return count(value, line_.entry.count, 0); }
    bool author(BytesView value) { return text(value, line_.entry.author); }
    bool kind(BytesView value) { return text(value, line_.entry.kind); }
    bool subject(BytesView value) { return text(value, line_.entry.subject); }
    bool value(BytesView value) {
        line_.entry.value = Bytes(value);
        return true;
    }
    bool why(BytesView value) { return optionalText(value, line_.entry.why); }
    bool as(BytesView value) { return optionalText(value, line_.entry.as); }
    bool wall(BytesView value) {
        if (journal::isNullValue(value)) {
            return true;
        }
        const auto pair = journal::itemsOf(value);
        const auto ms = pair && pair->size() == 2 ? integer((*pair)[0]) : std::nullopt;
        const auto minutes = ms ? integer((*pair)[1]) : std::nullopt;
        if (minutes) {
            line_.entry.wall = journal::Wall{*ms, *minutes};
        }
        return minutes.has_value();
    }
    bool group(BytesView value) {
        if (journal::isNullValue(value)) {
            return true;
        }
        const auto pair = journal::itemsOf(value);
        journal::Group read;
        const bool isRead = pair && pair->size() == 2 && count((*pair)[0], read.first, 0) &&
                            count((*pair)[1], read.n, 0);
        if (isRead) {
            line_.entry.group = read;
        }
        return isRead;
    }
    bool over(BytesView value) {
        const auto items = journal::itemsOf(value);
        if (!items) {
            return false;
        }
        for (const BytesView item : *items) {
            journal::Place named;
            if (!place(item, named)) {
                return false;
            }
            line_.entry.over.push_back(named);
        }
        return true;
    }
    bool digest(BytesView value) {
        const auto hex = journal::textOf(value);
        const auto bytes = hex ? fromHex(*hex) : std::nullopt;
        line_.digest = bytes ? Digest::fromBytes(*bytes) : std::nullopt;
        return line_.digest.has_value();
    }

    std::optional<Error> error_;
    EntryLine line_;
    journal::MapValue extra_;
    unsigned seen_ = 0;
};

Status parse(std::string_view text, CborBuilder& builder) {
    if (text.size() > 4 * journal::kGreatestEntryBytes) {
        return Error{ErrorCode::BeyondLimit, "It is longer than an entry can be (64 KiB).", {}};
    }
    if (!nlohmann::json::sax_parse(text.begin(), text.end(), &builder)) {
        return Error{ErrorCode::InvalidInput, "It cannot be read: " + builder.failure() + ".", {}};
    }
    return {};
}

} // namespace

Result<Bytes> readJson(std::string_view text) {
    CborBuilder builder;
    if (Status parsed = parse(text, builder); !parsed) {
        return parsed.error();
    }
    return builder.take();
}

Result<EntryLine> readEntryLine(std::string_view text) {
    LineReader reader;
    CborBuilder builder(&reader);
    const Status parsed = parse(text, builder);
    if (reader.error()) {
        return *reader.error();
    }
    if (!parsed) {
        return parsed.error();
    }
    return reader.finish();
}

} // namespace bullace::store
