# Whether every source of the tree is formatted as .clang-format says: cmake -DROOT=. -P shared-core/cmake/CheckStyle.cmake
# Versions of clang-format differ in what they write, so it is this one or none.
find_program(formatter clang-format-14)
if(NOT formatter)
    message("clang-format-14 is not installed: the formatting was not looked at")
    return()
endif()

set(files "")
foreach(dir IN ITEMS shared-core sync desktop mobile demo-orchard tests)
    file(GLOB_RECURSE found ${ROOT}/${dir}/*.hpp ${ROOT}/${dir}/*.cpp)
    list(APPEND files ${found})
endforeach()
execute_process(COMMAND ${formatter} --dry-run -Werror --style=file ${files}
    RESULT_VARIABLE status ERROR_VARIABLE report OUTPUT_VARIABLE report)
if(NOT status EQUAL 0)
    message(FATAL_ERROR "Not formatted (clang-format-14 -i FILE puts it right):\n${report}")
endif()
list(LENGTH files count)
message("${count} files are formatted")
