@rem Lets "exec node ..." in package.json run where the shell has no exec. There, exec makes Ctrl-C reach the server alone.
@%*
