// A child ends with its launcher, also when the launcher was killed.
process.on('disconnect', () => process.kill(process.pid, 'SIGTERM'));
process.channel?.unref();
