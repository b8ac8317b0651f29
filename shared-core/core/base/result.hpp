// The outcome of everything that a person, a file, a device or the network can make fail.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace bullace {

// Decides behaviour (status of a command, whether to try again); the message is for people.
enum class ErrorCode {
    InvalidInput, // what was given is not of the form asked for
    NotFound,     // no such file, subject, device
    AlreadyThere, // would overwrite something
    Damaged,      // bytes that do not agree with their digests, or are no journal
    NewerVersion, // written by a newer program; may be read by that only
    InUse,        // another program holds the file for writing
    ReadOnly,     // the file or its folder cannot be written
    DiskFull,
    Io,       // the disk failed otherwise
    Refused,  // the other side, or a rule, says no
    Outdated, // what the decision was made on has changed since
    BeyondLimit,
    Network,      // nobody answers, or the line broke
    WrongKey,     // another machine than the one that was paired
    WrongVersion, // the other side speaks no version that we speak
    Cancelled,
    Internal, // our own mistake
};

struct Error {
    ErrorCode code = ErrorCode::Internal;
    std::string message; // one or two sentences for the breeder: what failed, where, what to do
    std::string detail;  // for the log only
};

// Either a T or an Error. Ask ok() first; value() of an error is a bug of the caller.
template<typename T>
class [[nodiscard]] Result {
public:
    Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : state_(std::in_place_index<1>, std::move(error)) {}

    [[nodiscard]] bool ok() const { return state_.index() == 0; }
    explicit operator bool() const { return ok(); }

    [[nodiscard]] T& value() & { return std::get<0>(state_); }
    [[nodiscard]] const T& value() const& { return std::get<0>(state_); }
    [[nodiscard]] T&& value() && { return std::get<0>(std::move(state_)); }
    T& operator*() & { return value(); }
    const T& operator*() const& { return value(); }
    T&& operator*() && { return std::move(*this).value(); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }

    [[nodiscard]] const Error& error() const { return std::get<1>(state_); }

private:
    std::variant<T, Error> state_;
};

template<>
class [[nodiscard]] Result<void> {
public:
    Result() = default;
    Result(Error error) : failed_(true), error_(std::move(error)) {}

    [[nodiscard]] bool ok() const { return !failed_; }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const Error& error() const { return error_; }

private:
    bool failed_ = false;
    Error error_;
};

using Status = Result<void>;

} // namespace bullace
