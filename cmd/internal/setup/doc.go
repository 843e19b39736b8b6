// Package setup is what cmd/start and cmd/verify share: it finds out which
// system packages a machine lacks, installs them where it can and says what to
// install where it cannot, runs other programs, and shows how far a long
// compile has come. It uses the standard library alone, so that both commands
// run on a machine that has nothing but Go.
package setup
