# What every target of the tree shares: the language, the warnings, the sanitizers, and how a layer shows its headers.
option(BULLACE_WERROR "Warnings end the build" ON)
set(BULLACE_SANITIZE "" CACHE STRING "Sanitizers for every target, e.g. address;undefined or thread")
option(BULLACE_FUZZ "Build the libFuzzer targets (needs clang)" OFF)

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT CMAKE_BUILD_TYPE)
    set(CMAKE_BUILD_TYPE RelWithDebInfo)
endif()
# Programs lie together, so that the scripts and the tests find them by one path.
set(CMAKE_RUNTIME_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/bin)

find_program(BULLACE_LLD ld.lld)
if(BULLACE_LLD)
    add_link_options(-fuse-ld=lld)
endif()

# All from Debian 12; found here once, so that every folder sees them.
find_package(OpenSSL 3.0 REQUIRED)
find_package(SQLite3 3.40 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(Boost 1.81 REQUIRED)
find_package(CLI11 2.1 REQUIRED)
find_package(Eigen3 3.4 REQUIRED)
find_package(Threads REQUIRED)
# GLPK has neither a CMake nor a pkg-config file.
find_path(BULLACE_GLPK_HEADER glpk.h REQUIRED)
find_library(BULLACE_GLPK glpk REQUIRED)
find_library(BULLACE_NLOPT nlopt REQUIRED)

add_library(bullace_options INTERFACE)
target_compile_options(bullace_options INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Wold-style-cast
    -Woverloaded-virtual -Wcast-align -Wdouble-promotion -Wformat=2)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    target_compile_options(bullace_options INTERFACE -Wduplicated-cond -Wlogical-op)
endif()
if(BULLACE_WERROR)
    target_compile_options(bullace_options INTERFACE -Werror)
endif()
if(BULLACE_SANITIZE)
    string(REPLACE ";" "," sanitizers "${BULLACE_SANITIZE}")
    add_compile_options(-fsanitize=${sanitizers} -fno-omit-frame-pointer -fno-sanitize-recover=all)
    add_link_options(-fsanitize=${sanitizers})
    # g++ 12 warns of its own instrumentation here; the builds without it keep both warnings.
    target_compile_options(bullace_options INTERFACE -Wno-sign-conversion -Wno-maybe-uninitialized)
endif()
if(BULLACE_FUZZ)
    add_compile_options(-fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all)
    add_link_options(-fsanitize=address,undefined)
endif()

# bullace_layer(NAME FOLDER PREFIX): a static library of all .cpp files below FOLDER. Its headers are seen as
# "PREFIX/…", and only by targets that link it: each layer gets an include root of its own in the build tree, with one
# link in it, so that a header of a layer that is not linked cannot be found at all.
function(bullace_layer name folder prefix)
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${folder}/*.cpp)
    list(FILTER sources EXCLUDE REGEX "/main\\.cpp$")
    add_library(${name} STATIC ${sources})
    bullace_include_root(${name} ${folder} ${prefix})
    target_link_libraries(${name} PRIVATE bullace_options)
endfunction()

function(bullace_include_root name folder prefix)
    set(root ${CMAKE_BINARY_DIR}/include/${name})
    get_filename_component(parent ${root}/${prefix} DIRECTORY)
    file(MAKE_DIRECTORY ${parent})
    if(NOT EXISTS ${root}/${prefix})
        file(CREATE_LINK ${folder} ${root}/${prefix} SYMBOLIC)
    endif()
    target_include_directories(${name} PUBLIC $<BUILD_INTERFACE:${root}>)
endfunction()
