// Small JSON documents for programs that read what the console prints.
#pragma once

#include "core/journal/json_value.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace bullace::journal {

// An object whose members stand in the order in which they are added.
class JsonObject {
public:
    JsonObject& text(std::string_view name, std::string_view value) {
        begin(name);
        appendJsonText(out_, value);
        return *this;
    }
    JsonObject& number(std::string_view name, std::int64_t value) {
        return raw(name, std::to_string(value));
    }
    JsonObject& count(std::string_view name, std::uint64_t value) {
        return raw(name, std::to_string(value));
    }
    JsonObject& truth(std::string_view name, bool value) {
        return raw(name, value ? "true" : "false");
    }
    // `json` is a JSON value already.
    JsonObject& raw(std::string_view name, std::string_view json) {
        begin(name);
        out_ += json;
        return *this;
    }
    [[nodiscard]] std::string done() const { return out_ + "}"; }

private:
    void begin(std::string_view name) {
        out_ += out_.size() == 1 ? "" : ",";
        appendJsonText(out_, name);
        out_ += ':';
    }
    std::string out_ = "{";
};

class JsonList {
public:
    JsonList& raw(std::string_view json) {
        out_ += out_.size() == 1 ? "" : ",";
        out_ += json;
        return *this;
    }
    JsonList& text(std::string_view value) {
        out_ += out_.size() == 1 ? "" : ",";
        appendJsonText(out_, value);
        return *this;
    }
    [[nodiscard]] std::string done() const { return out_ + "]"; }

private:
    std::string out_ = "[";
};

} // namespace bullace::journal
