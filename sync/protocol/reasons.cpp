// What each reason for a goodbye says to the person who waits for the sync.
#include "sync/protocol/session.hpp"

namespace bullace::sync {

Error goodbyeError(std::uint8_t reason) {
    switch (static_cast<Reason>(reason)) {
    case Reason::Closing:
        return {ErrorCode::Cancelled,
                "The sync was stopped before its end. What came through is kept; sync again later.",
                {}};
    case Reason::NoRoom:
        return {
            ErrorCode::DiskFull,
            "There is no room on the disk for what was to be stored. Nothing is lost: make room "
            "there and sync again.",
            {}};
    case Reason::Version:
        return {ErrorCode::WrongVersion,
                "The device and the station speak different versions of the sync. Update the older "
                "of the two programs.",
                {}};
    case Reason::Revoked:
        return {
            ErrorCode::Refused,
            "The office took this device off the station's list. What it sent before counts; to "
            "sync again it must be paired anew.",
            {}};
    case Reason::Replaced:
        return {
            ErrorCode::Refused, "A newer sync of the same device goes on instead of this one.", {}};
    case Reason::BrokenFrame:
        return {ErrorCode::Network,
                "What came over the line is no message of a sync. Sync again; if it happens again, "
                "update both programs.",
                {}};
    case Reason::TooSlow:
        return {ErrorCode::Network,
                "The other side was silent for too long. What came through is kept; go nearer to "
                "the station's network and sync again.",
                {}};
    case Reason::Failed:
        return {ErrorCode::Io,
                "The other side could not read or write its journal, so the sync ended. Check the "
                "program and the disk there.",
                {}};
    case Reason::NotYours:
        return {ErrorCode::Refused,
                "This device's journal does not belong to the key it was paired with. Pair the "
                "device anew.",
                {}};
    case Reason::Crowded:
        return {ErrorCode::Network,
                "The station has too many connections at the moment. Try again in a minute.",
                {}};
    }
    return {ErrorCode::Network,
            "The other side ended the sync for a reason that this program does not know. Update "
            "this program.",
            {}};
}

} // namespace bullace::sync
