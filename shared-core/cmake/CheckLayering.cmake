# Fails on an include line that a folder has no right to: cmake -DROOT=. -P shared-core/cmake/CheckLayering.cmake
# The include roots keep our own layers apart already; this also sees the libraries in /usr/include, and says why.
set(bad "")

# Every #include in `dir` (a file name or a quoted layer behind it) that matches `pattern` is reported, except in files
# whose path matches the optional fourth argument.
function(forbid dir pattern why)
    file(GLOB_RECURSE files ${ROOT}/${dir}/*.hpp ${ROOT}/${dir}/*.cpp)
    if(ARGC GREATER 3)
        list(FILTER files EXCLUDE REGEX "${ARGV3}")
    endif()
    set(found "${bad}")
    foreach(file IN LISTS files)
        file(STRINGS ${file} hits REGEX "^[ \t]*#[ \t]*include[ \t]*${pattern}")
        foreach(hit IN LISTS hits)
            string(APPEND found "\n${file}: ${hit} (${why})")
        endforeach()
    endforeach()
    set(bad "${found}" PARENT_SCOPE)
endfunction()

forbid(shared-core/core "<(Q|boost/(asio|beast|system)|sqlite3|nlohmann|iostream|thread|mutex|sys/|CLI)"
    "core decides and computes; it opens nothing and knows no screen")
forbid(shared-core/core "<openssl" "only base/digest uses OpenSSL" "/core/base/digest\\.cpp$")
forbid(shared-core/core "<glpk" "GLPK stays inside the files that plan crosses" "/core/breeding/[a-z_]+\\.cpp$")
forbid(shared-core/core "<nlopt" "NLopt stays inside the files that search for variances" "/core/trials/[a-z_]+\\.cpp$")
forbid(shared-core/core "\"(store|sync|quick|desk|tablet|demo|support)/" "core stands below all other layers")
forbid(shared-core/store "<(Q|boost|openssl|CLI)" "the store knows no Qt, no Boost and no OpenSSL")
forbid(shared-core/store "\"(sync|quick|demo|support)/" "the store knows core only")
forbid(sync/protocol "<(Q|boost|sqlite3|nlohmann|openssl|thread|mutex|sys/|netinet|CLI)"
    "the protocol takes bytes and ticks, and gives actions")
forbid(sync/protocol "\"(store|quick|demo|support)/|\"sync/(net|server)/" "the protocol knows core only")
forbid(sync/net "<(Q|sqlite3|nlohmann|CLI)" "the network moves bytes and knows no database")
forbid(sync/net "\"(store|quick|demo|support)/|\"sync/server/" "the network moves bytes and knows no database")
forbid(sync/server "<(Q|boost|CLI)" "what joins store and network sees Boost through sync/net only")
forbid(shared-core/quick "<(boost|sqlite3|nlohmann|QtWidgets|QWidget)" "what both screens share sees core and Qt Quick")
forbid(shared-core/quick "\"(store|sync)/" "what both screens share sees core and Qt Quick")
forbid(mobile/viewmodels "<(boost|sqlite3|nlohmann)" "what stands behind a page sees libraries of ours and Qt")
forbid(mobile/field "<(Q|boost|sqlite3|nlohmann)|\"(quick|tablet|camera)/" "a walk needs no screen")
forbid(mobile/camera "<(boost|sqlite3|nlohmann)|\"(store|sync|quick|field|viewmodels)/"
    "the camera gives pictures and knows nothing of what they are for")
forbid(desktop/office "<(Q|boost|sqlite3|nlohmann|iostream)|\"(quick|desk|paper|plots|field|tablet)/"
    "what the office does needs no screen")
forbid(desktop/viewmodels "<(boost|sqlite3|nlohmann)" "what stands behind a page sees core and quick")
forbid(desktop/paper "<(boost|sqlite3|nlohmann|QtWidgets|QWidget)|\"(store|sync|office|desk)/"
    "what is printed is painted from plain tables")
forbid(desktop/plots "<(boost|sqlite3|nlohmann)|\"(store|sync|office|desk|paper)/" "plots are painted from plain tables")
forbid(desktop "<qcustomplot" "the library that draws plots stays inside desktop/plots" "/desktop/plots/[a-z_]+\\.cpp$")
forbid(desktop/console "<(Q|boost|sqlite3)" "the console uses the store and the network through their headers")
forbid(demo-orchard "<(Q|boost|sqlite3|openssl)|\"(store|sync)/" "the demo station is entries, made with core alone")

# A header that shows Boost hands three seconds of compile time to whoever includes it.
foreach(dir IN ITEMS shared-core sync/protocol sync/server mobile desktop demo-orchard)
    forbid(${dir} "<boost/(asio|beast)" "Asio stays inside sync/net")
endforeach()

if(bad)
    message(FATAL_ERROR "Layering broken:${bad}")
endif()
