package main

import (
	"syscall"
	"unsafe"
)

// windowVanishes says whether the window was opened for this program alone and closes
// with it: no other process is at its console.
func windowVanishes() bool {
	list := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	if list.Find() != nil {
		return false
	}
	var ids [2]uint32
	n, _, _ := list.Call(uintptr(unsafe.Pointer(&ids[0])), uintptr(len(ids)))
	return n == 1
}
