// The one place where Asio's own functions are compiled.
#include "sync/net/asio.hpp"

#include <boost/asio/impl/src.hpp>
#include <boost/asio/ssl/impl/src.hpp>
