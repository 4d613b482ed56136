//go:build !windows

package main

// windowVanishes: elsewhere a terminal stays when a program ends.
func windowVanishes() bool { return false }
