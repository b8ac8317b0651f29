// Boost.Asio as this folder uses it: compiled once, in asio_separate.cpp. No header outside
// sync/net includes this one.
#pragma once

#define BOOST_ASIO_SEPARATE_COMPILATION
#define BOOST_ASIO_NO_DEPRECATED
#ifdef __SANITIZE_THREAD__
// The thread sanitizer knows no fences; Asio's locks order everything that is handed over here.
#define BOOST_ASIO_DISABLE_FENCED_BLOCK
#endif

#include <boost/asio/awaitable.hpp>
#include <boost/asio/buffer.hpp>
#include <boost/asio/co_spawn.hpp>
#include <boost/asio/connect.hpp>
#include <boost/asio/detached.hpp>
#include <boost/asio/error.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/ip/v6_only.hpp>
#include <boost/asio/post.hpp>
#include <boost/asio/redirect_error.hpp>
#include <boost/asio/ssl.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/this_coro.hpp>
#include <boost/asio/use_awaitable.hpp>
#include <boost/asio/write.hpp>

namespace bullace::sync::net {

namespace asio = boost::asio;
using asio::awaitable;
using asio::ip::tcp;
using boost::system::error_code;
using TlsStream = asio::ssl::stream<tcp::socket>;

} // namespace bullace::sync::net
